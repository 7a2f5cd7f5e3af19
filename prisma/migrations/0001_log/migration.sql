-- CreateTable
CREATE TABLE "LogEntry" (
    "seq" INTEGER NOT NULL PRIMARY KEY,
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "author" TEXT NOT NULL,
    "device" TEXT NOT NULL,
    "saidAt" TEXT NOT NULL,
    "receivedAt" TEXT NOT NULL,
    "clockShiftMs" BIGINT NOT NULL,
    "contentHash" TEXT NOT NULL,
    "previousHash" TEXT NOT NULL,
    "hash" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "LogContent" (
    "seq" INTEGER NOT NULL PRIMARY KEY,
    "bytes" TEXT NOT NULL,
    "salt" TEXT,
    "withheldBySeq" INTEGER,
    CONSTRAINT "LogContent_seq_fkey" FOREIGN KEY ("seq") REFERENCES "LogEntry" ("seq") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "LogContent_withheldBySeq_fkey" FOREIGN KEY ("withheldBySeq") REFERENCES "LogEntry" ("seq") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateIndex
CREATE UNIQUE INDEX "LogEntry_id_key" ON "LogEntry"("id");

-- CreateIndex
CREATE INDEX "LogEntry_kind_idx" ON "LogEntry"("kind");

-- What follows is not part of the Prisma schema. The log's tables are never redefined: a redefinition would drop
-- these triggers with the table, and new needs get new tables.

-- Which withdrawals and withholdings name a record.
CREATE INDEX "LogContent_names_record" ON "LogContent"(json_extract("bytes", '$.body.record'))
WHERE json_extract("bytes", '$.kind') IN ('withdrawal', 'withholding');

CREATE TRIGGER "LogEntry_is_never_changed" BEFORE UPDATE ON "LogEntry"
BEGIN SELECT RAISE(ABORT, 'the log is append-only: an entry is never changed'); END;

CREATE TRIGGER "LogEntry_is_never_deleted" BEFORE DELETE ON "LogEntry"
BEGIN SELECT RAISE(ABORT, 'the log is append-only: an entry is never deleted'); END;

-- REPLACE removes the old row without firing the trigger above, so an id or number that exists is refused here.
CREATE TRIGGER "LogEntry_is_appended_to_the_chain" BEFORE INSERT ON "LogEntry"
BEGIN
    SELECT RAISE(ABORT, 'the log is append-only: this id is in it already')
    WHERE EXISTS (SELECT 1 FROM "LogEntry" WHERE "id" = NEW."id");
    SELECT RAISE(ABORT, 'the log is append-only: an entry takes the next number')
    WHERE NEW."seq" IS NOT 1 + (SELECT coalesce(max("seq"), 0) FROM "LogEntry");
    SELECT RAISE(ABORT, 'the log is a chain: an entry carries the hash of the one before it')
    WHERE NEW."seq" > 1 AND NEW."previousHash" IS NOT (SELECT "hash" FROM "LogEntry" WHERE "seq" = NEW."seq" - 1);
END;

CREATE TRIGGER "LogContent_is_never_deleted" BEFORE DELETE ON "LogContent"
BEGIN SELECT RAISE(ABORT, 'the log is append-only: what was said is never deleted'); END;

CREATE TRIGGER "LogContent_belongs_to_its_entry" BEFORE INSERT ON "LogContent"
BEGIN
    SELECT RAISE(ABORT, 'the log is append-only: this content is in it already')
    WHERE EXISTS (SELECT 1 FROM "LogContent" WHERE "seq" = NEW."seq");
    SELECT RAISE(ABORT, 'content comes with its salt, and nothing of it is withheld yet')
    WHERE NEW."salt" IS NULL OR NEW."withheldBySeq" IS NOT NULL;
    SELECT RAISE(ABORT, 'content and entry say different things')
    WHERE NOT EXISTS (
        SELECT 1 FROM "LogEntry" AS "e"
        WHERE "e"."seq" = NEW."seq"
            AND "e"."id" = json_extract(NEW."bytes", '$.id')
            AND "e"."kind" = json_extract(NEW."bytes", '$.kind')
            AND "e"."version" = json_extract(NEW."bytes", '$.version')
            AND "e"."author" = json_extract(NEW."bytes", '$.author')
            AND "e"."device" = json_extract(NEW."bytes", '$.device')
            AND "e"."saidAt" = json_extract(NEW."bytes", '$.saidAt')
    );
END;

-- The only change there is: a later withholding that names this very record takes the fields that it names.
CREATE TRIGGER "LogContent_is_changed_by_a_withholding_only" BEFORE UPDATE ON "LogContent"
BEGIN
    SELECT RAISE(ABORT, 'only a withholding that names this record may take something out of it')
    WHERE NEW."seq" IS NOT OLD."seq"
        OR NOT EXISTS (
            SELECT 1
            FROM "LogEntry" AS "withholding"
            JOIN "LogContent" AS "said" ON "said"."seq" = "withholding"."seq"
            JOIN "LogEntry" AS "target" ON "target"."seq" = OLD."seq"
            WHERE "withholding"."seq" = NEW."withheldBySeq"
                AND "withholding"."seq" > OLD."seq"
                AND "withholding"."kind" = 'withholding'
                AND "target"."kind" <> 'withholding'
                AND json_extract("said"."bytes", '$.body.record') = "target"."id"
        );
    SELECT RAISE(ABORT, 'the salt goes with what is withheld')
    WHERE NEW."salt" IS NOT NULL;
    SELECT RAISE(ABORT, 'only the fields that the withholding names may be taken out')
    WHERE json_remove(NEW."bytes", '$.body') IS NOT json_remove(OLD."bytes", '$.body')
        OR (SELECT count(*) FROM json_each(NEW."bytes", '$.body'))
            <> (SELECT count(*) FROM json_each(OLD."bytes", '$.body'))
        OR EXISTS (
            SELECT 1
            FROM json_each(OLD."bytes", '$.body') AS "was"
            LEFT JOIN json_each(NEW."bytes", '$.body') AS "is" ON "is"."key" = "was"."key"
            WHERE CASE
                WHEN "was"."key" IN (
                    SELECT "field"."value"
                    FROM "LogContent" AS "said", json_each("said"."bytes", '$.body.fields') AS "field"
                    WHERE "said"."seq" = NEW."withheldBySeq"
                )
                THEN "is"."type" IS NOT 'text' OR "is"."value" IS NOT '[withheld]'
                ELSE "is"."type" IS NOT "was"."type" OR "is"."value" IS NOT "was"."value"
            END
        );
END;

-- The withdrawals that stand: which record each takes back, and which one it puts in its place, if any.
CREATE VIEW "LogCorrection" AS
SELECT json_extract("w"."bytes", '$.body.record') AS "record", json_extract("w"."bytes", '$.body.replacedBy') AS "replacedBy"
FROM "LogContent" AS "w"
WHERE json_extract("w"."bytes", '$.kind') IN ('withdrawal', 'withholding')
    AND json_extract("w"."bytes", '$.kind') = 'withdrawal'
    AND NOT EXISTS (
        SELECT 1 FROM "LogContent" AS "undone"
        WHERE json_extract("undone"."bytes", '$.kind') IN ('withdrawal', 'withholding')
            AND json_extract("undone"."bytes", '$.kind') = 'withdrawal'
            AND json_extract("undone"."bytes", '$.body.record') = json_extract("w"."bytes", '$.id')
    );

-- A part is what the newest correction of its record says. What was taken back and not replaced can't be fitted.
CREATE TRIGGER "No_general_purpose_switch_is_a_repair" BEFORE INSERT ON "LogContent"
WHEN json_extract(NEW."bytes", '$.kind') = 'repair' AND json_extract(NEW."bytes", '$.body.fittedPart') IS NOT NULL
BEGIN
    SELECT RAISE(ABORT, 'no general-purpose switch: Only a part that the maker names for this furnace can be recorded as a repair. Order the factory part. It is already in? Record it as found fitted, when and by whom.')
    WHERE NOT (
        WITH RECURSIVE "newest"("id") AS (
            SELECT json_extract(NEW."bytes", '$.body.fittedPart')
            UNION
            SELECT "corrected"."replacedBy"
            FROM "newest" JOIN "LogCorrection" AS "corrected" ON "corrected"."record" = "newest"."id"
        )
        SELECT count(*) > 0 AND sum(json_extract("said"."bytes", '$.body.class') IS NOT 'factory') = 0
        FROM "newest"
        LEFT JOIN "LogEntry" AS "part" ON "part"."id" = "newest"."id" AND "part"."kind" = 'part'
        LEFT JOIN "LogContent" AS "said" ON "said"."seq" = "part"."seq"
        WHERE NOT EXISTS (SELECT 1 FROM "LogCorrection" AS "corrected" WHERE "corrected"."record" = "newest"."id")
    );
END;

CREATE TRIGGER "No_report_is_read_off_a_general_purpose_switch" BEFORE INSERT ON "LogContent"
WHEN json_extract(NEW."bytes", '$.kind') = 'report' AND json_extract(NEW."bytes", '$.body.readOffPart') IS NOT NULL
BEGIN
    SELECT RAISE(ABORT, 'no general-purpose switch: A number read off an adjustable or general-purpose switch says nothing about this furnace’s rating. It is already in? Record it as found fitted, when and by whom.')
    WHERE NOT (
        WITH RECURSIVE "newest"("id") AS (
            SELECT json_extract(NEW."bytes", '$.body.readOffPart')
            UNION
            SELECT "corrected"."replacedBy"
            FROM "newest" JOIN "LogCorrection" AS "corrected" ON "corrected"."record" = "newest"."id"
            WHERE "corrected"."replacedBy" IS NOT NULL
        )
        SELECT count(*) > 0
            AND sum(coalesce(json_extract("said"."bytes", '$.body.class'), 'general-purpose') = 'general-purpose') = 0
        FROM "newest"
        LEFT JOIN "LogEntry" AS "part" ON "part"."id" = "newest"."id" AND "part"."kind" = 'part'
        LEFT JOIN "LogContent" AS "said" ON "said"."seq" = "part"."seq"
        WHERE NOT EXISTS (
            SELECT 1 FROM "LogCorrection" AS "corrected"
            WHERE "corrected"."record" = "newest"."id" AND "corrected"."replacedBy" IS NOT NULL
        )
    );
END;
