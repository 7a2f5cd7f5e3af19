-- CreateTable
CREATE TABLE "DeviceEnding" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "device" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "sessionId" TEXT,
    "endedAt" DATETIME NOT NULL,
    "endedBy" TEXT NOT NULL,
    "emptiedAt" DATETIME,
    CONSTRAINT "DeviceEnding_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "SetAsideRecord" (
    "endingId" TEXT NOT NULL,
    "recordId" TEXT NOT NULL,
    "place" INTEGER NOT NULL,
    "bytes" TEXT,
    "clockShiftMs" BIGINT NOT NULL,
    "receivedAt" DATETIME NOT NULL,
    "decision" TEXT,
    "decidedAt" DATETIME,
    "decidedBy" TEXT,
    "reason" TEXT,

    PRIMARY KEY ("endingId", "recordId"),
    CONSTRAINT "SetAsideRecord_endingId_fkey" FOREIGN KEY ("endingId") REFERENCES "DeviceEnding" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateIndex
CREATE INDEX "DeviceEnding_device_personId_idx" ON "DeviceEnding"("device", "personId");

-- CreateIndex
CREATE INDEX "DeviceEnding_sessionId_idx" ON "DeviceEnding"("sessionId");
