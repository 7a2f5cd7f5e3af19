-- Not part of the Prisma schema: which endings there are of a visit, because nothing is added to a visit that has ended.
CREATE INDEX "LogContent_ends_visit" ON "LogContent"(json_extract("bytes", '$.body.visitId'))
WHERE json_extract("bytes", '$.kind') = 'ending';
