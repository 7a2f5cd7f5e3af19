-- CreateTable
CREATE TABLE "ApiToken" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "personId" TEXT NOT NULL,
    "secretHash" TEXT NOT NULL,
    "madeBy" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "revokedAt" DATETIME,
    "lastUsedAt" DATETIME,
    CONSTRAINT "ApiToken_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "ApiToken_madeBy_fkey" FOREIGN KEY ("madeBy") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateIndex
CREATE UNIQUE INDEX "ApiToken_secretHash_key" ON "ApiToken"("secretHash");

-- CreateIndex
CREATE INDEX "ApiToken_personId_idx" ON "ApiToken"("personId");

-- CreateIndex
CREATE INDEX "ApiToken_madeBy_idx" ON "ApiToken"("madeBy");


-- The rules below are not part of the Prisma schema.

-- A token is what an office program has in place of a password, and a program is never a manager.
CREATE TRIGGER "ApiToken_belongs_to_a_program" BEFORE INSERT ON "ApiToken"
WHEN EXISTS (SELECT 1 FROM "Person" WHERE "id" = NEW."personId" AND "role" = 'manager')
    OR EXISTS (SELECT 1 FROM "Account" WHERE "personId" = NEW."personId")
BEGIN SELECT RAISE(ABORT, 'a token belongs to an office program, which is no manager and has no password'); END;

CREATE TRIGGER "Person_with_tokens_is_no_manager" BEFORE UPDATE OF "role" ON "Person"
WHEN NEW."role" = 'manager' AND EXISTS (SELECT 1 FROM "ApiToken" WHERE "personId" = NEW."id")
BEGIN SELECT RAISE(ABORT, 'an office program is never a manager'); END;

CREATE TRIGGER "Person_with_tokens_has_no_password" BEFORE INSERT ON "Account"
WHEN EXISTS (SELECT 1 FROM "ApiToken" WHERE "personId" = NEW."personId")
BEGIN SELECT RAISE(ABORT, 'an office program has no password'); END;

CREATE TRIGGER "ApiToken_is_never_deleted" BEFORE DELETE ON "ApiToken"
BEGIN SELECT RAISE(ABORT, 'a token is ended, never deleted'); END;

CREATE TRIGGER "ApiToken_stays_as_made" BEFORE UPDATE ON "ApiToken"
WHEN NEW."id" IS NOT OLD."id" OR NEW."personId" IS NOT OLD."personId" OR NEW."secretHash" IS NOT OLD."secretHash"
    OR NEW."expiresAt" IS NOT OLD."expiresAt"
    OR (OLD."revokedAt" IS NOT NULL AND NEW."revokedAt" IS NOT OLD."revokedAt")
BEGIN SELECT RAISE(ABORT, 'a token is ended once, and nothing else of it changes'); END;
