-- The triggers write into the table that is redefined: they go first, and come again with the mark.
DROP TRIGGER "Picture_held_is_news";
DROP TRIGGER "Picture_gone_is_news";

-- RedefineTable
-- Each row has a mark of its own, drawn by chance, those that are there already too.
CREATE TABLE "new_PictureNews" (
    "number" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "sha256" TEXT NOT NULL,
    "held" BOOLEAN NOT NULL,
    "mark" TEXT NOT NULL
);
INSERT INTO "new_PictureNews" ("number", "sha256", "held", "mark")
SELECT "number", "sha256", "held", lower(hex(randomblob(32))) FROM "PictureNews" ORDER BY "number";
DROP TABLE "PictureNews";
ALTER TABLE "new_PictureNews" RENAME TO "PictureNews";

-- What follows is not part of the Prisma schema. A migration that redefines "Picture" must create its triggers again.

-- Whatever notes that a picture is held, or is held no longer, makes news of it.
CREATE TRIGGER "Picture_held_is_news" AFTER INSERT ON "Picture"
BEGIN
  INSERT INTO "PictureNews" ("sha256", "held", "mark") VALUES (NEW."sha256", true, lower(hex(randomblob(32))));
END;

CREATE TRIGGER "Picture_gone_is_news" AFTER DELETE ON "Picture"
BEGIN
  INSERT INTO "PictureNews" ("sha256", "held", "mark") VALUES (OLD."sha256", false, lower(hex(randomblob(32))));
END;
