-- CreateTable
CREATE TABLE "Person" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "signInName" TEXT NOT NULL,
    "role" TEXT NOT NULL CHECK ("role" IN ('manager', 'dispatcher', 'technician')),
    "active" BOOLEAN NOT NULL DEFAULT true,
    "email" TEXT NOT NULL,
    "emailVerified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Session" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "token" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL,
    "ipAddress" TEXT,
    "userAgent" TEXT,
    CONSTRAINT "Session_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Account" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "accountId" TEXT NOT NULL,
    "providerId" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "password" TEXT,
    "accessToken" TEXT,
    "refreshToken" TEXT,
    "idToken" TEXT,
    "accessTokenExpiresAt" DATETIME,
    "refreshTokenExpiresAt" DATETIME,
    "scope" TEXT,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL,
    CONSTRAINT "Account_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Verification" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "OneTimeLink" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "purpose" TEXT NOT NULL CHECK ("purpose" IN ('set-up', 'invitation', 'reset')),
    "secretHash" TEXT NOT NULL,
    "personId" TEXT,
    "name" TEXT,
    "role" TEXT,
    "madeBy" TEXT,
    "madeAt" DATETIME NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "closedAt" DATETIME
);

-- CreateTable
CREATE TABLE "PersonEvent" (
    "seq" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "at" DATETIME NOT NULL,
    "kind" TEXT NOT NULL,
    "personId" TEXT,
    "byId" TEXT,
    "detail" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "WrongGuesses" (
    "key" TEXT NOT NULL PRIMARY KEY,
    "count" INTEGER NOT NULL,
    "lastAt" BIGINT NOT NULL
);

-- CreateIndex
CREATE UNIQUE INDEX "Person_signInName_key" ON "Person"("signInName");

-- CreateIndex
CREATE UNIQUE INDEX "Person_email_key" ON "Person"("email");

-- CreateIndex
CREATE UNIQUE INDEX "Session_token_key" ON "Session"("token");

-- CreateIndex
CREATE INDEX "Session_personId_idx" ON "Session"("personId");

-- CreateIndex
CREATE INDEX "Account_personId_idx" ON "Account"("personId");

-- CreateIndex
CREATE UNIQUE INDEX "Account_providerId_personId_key" ON "Account"("providerId", "personId");

-- CreateIndex
CREATE INDEX "Verification_identifier_idx" ON "Verification"("identifier");

-- CreateIndex
CREATE UNIQUE INDEX "OneTimeLink_secretHash_key" ON "OneTimeLink"("secretHash");

-- CreateIndex
CREATE INDEX "OneTimeLink_purpose_idx" ON "OneTimeLink"("purpose");

-- CreateIndex
CREATE INDEX "PersonEvent_personId_idx" ON "PersonEvent"("personId");

-- CreateIndex
CREATE INDEX "WrongGuesses_lastAt_idx" ON "WrongGuesses"("lastAt");

-- The rules below are not part of the Prisma schema. A migration that redefines one of these tables drops its
-- triggers and must create them again.

-- Records name their author for ever, so nobody is deleted, not even by REPLACE.
CREATE TRIGGER "Person_is_never_deleted" BEFORE DELETE ON "Person"
BEGIN SELECT RAISE(ABORT, 'a person is deactivated, never deleted'); END;

CREATE TRIGGER "Person_is_never_replaced" BEFORE INSERT ON "Person"
WHEN EXISTS (SELECT 1 FROM "Person" WHERE "id" = NEW."id" OR "signInName" = NEW."signInName" OR "email" = NEW."email")
BEGIN SELECT RAISE(ABORT, 'somebody of that name or id exists'); END;

CREATE TRIGGER "Person_keeps_the_id" BEFORE UPDATE OF "id" ON "Person"
WHEN NEW."id" <> OLD."id"
BEGIN SELECT RAISE(ABORT, 'a person keeps the id'); END;

-- A team without an active manager could never let anybody in again.
CREATE TRIGGER "Person_leaves_a_manager" BEFORE UPDATE OF "role", "active" ON "Person"
WHEN OLD."role" = 'manager' AND OLD."active" AND NOT (NEW."role" = 'manager' AND NEW."active")
    AND NOT EXISTS (SELECT 1 FROM "Person" WHERE "role" = 'manager' AND "active" AND "id" <> OLD."id")
BEGIN SELECT RAISE(ABORT, 'the last active manager stays'); END;

CREATE TRIGGER "PersonEvent_is_never_changed" BEFORE UPDATE ON "PersonEvent"
BEGIN SELECT RAISE(ABORT, 'a person event is never changed'); END;

CREATE TRIGGER "PersonEvent_is_never_deleted" BEFORE DELETE ON "PersonEvent"
BEGIN SELECT RAISE(ABORT, 'a person event is never deleted'); END;

CREATE TRIGGER "PersonEvent_is_never_replaced" BEFORE INSERT ON "PersonEvent"
WHEN EXISTS (SELECT 1 FROM "PersonEvent" WHERE "seq" = NEW."seq")
BEGIN SELECT RAISE(ABORT, 'a person event is never replaced'); END;

-- A link works once.
CREATE TRIGGER "OneTimeLink_stays_closed" BEFORE UPDATE ON "OneTimeLink"
WHEN OLD."closedAt" IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'a closed link stays closed'); END;
