-- CreateTable
CREATE TABLE "LookUp" (
    "mark" TEXT NOT NULL PRIMARY KEY,
    "positionId" TEXT NOT NULL,
    "day" TEXT NOT NULL
) WITHOUT ROWID;

-- CreateIndex
CREATE INDEX "LookUp_day_idx" ON "LookUp"("day");
