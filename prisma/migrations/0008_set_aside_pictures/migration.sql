-- CreateTable
CREATE TABLE "SetAsidePicture" (
    "endingId" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "bytes" BLOB NOT NULL,
    "receivedAt" DATETIME NOT NULL,

    PRIMARY KEY ("endingId", "sha256"),
    CONSTRAINT "SetAsidePicture_endingId_fkey" FOREIGN KEY ("endingId") REFERENCES "DeviceEnding" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);
