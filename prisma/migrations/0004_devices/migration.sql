-- CreateTable
CREATE TABLE "Device" (
    "id" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "sessionId" TEXT,
    "firstContactAt" DATETIME NOT NULL,
    "lastContactAt" DATETIME NOT NULL,
    "examinedSeq" INTEGER NOT NULL,
    "waiting" INTEGER NOT NULL,
    "build" TEXT NOT NULL,

    PRIMARY KEY ("id", "personId"),
    CONSTRAINT "Device_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateIndex
CREATE INDEX "Device_personId_idx" ON "Device"("personId");
