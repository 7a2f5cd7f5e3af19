-- CreateTable
CREATE TABLE "Picture" (
    "sha256" TEXT NOT NULL PRIMARY KEY,
    "storedSha256" TEXT NOT NULL,
    "mediaType" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "bytes" INTEGER NOT NULL,
    "heldSince" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "PictureNews" (
    "number" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "sha256" TEXT NOT NULL,
    "held" BOOLEAN NOT NULL
);

-- What follows is not part of the Prisma schema. A migration that redefines "Picture" must create its triggers again.

-- Whatever notes that a picture is held, or is held no longer, makes news of it.
CREATE TRIGGER "Picture_held_is_news" AFTER INSERT ON "Picture"
BEGIN INSERT INTO "PictureNews" ("sha256", "held") VALUES (NEW."sha256", true); END;

CREATE TRIGGER "Picture_gone_is_news" AFTER DELETE ON "Picture"
BEGIN INSERT INTO "PictureNews" ("sha256", "held") VALUES (OLD."sha256", false); END;

-- Which photos in the log name a picture: bytes are taken in only where one does, and none of them is withheld.
CREATE INDEX "LogContent_shows_picture" ON "LogContent"(json_extract("bytes", '$.body.sha256'))
WHERE json_extract("bytes", '$.kind') = 'photo';
