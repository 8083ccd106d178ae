-- The pairs with visits of which none is waited for, and none was told of after ?1 (milliseconds
-- since 1970 UTC).
SELECT p.id
FROM pair AS p
WHERE EXISTS (SELECT 1 FROM visit WHERE pair = p.id)
    AND NOT EXISTS (
        SELECT 1 FROM visit AS v
        WHERE v.pair = p.id AND (
            v.signed = 0
            -- What replaces it is asked the same, so that a chain ends in a receipt.
            OR (v.receipt = 0 AND NOT EXISTS (SELECT 1 FROM visit WHERE replaces = v.id))
            -- An amendment is of the same pair and was begun later; where it is not, the pair stays.
            OR EXISTS (
                SELECT 1 FROM visit AS a
                WHERE a.replaces = v.id AND (a.pair <> v.pair OR a.number < v.number)
            )
            -- The latest entry is not the last where the clock was set back during the visit.
            OR ?1 < coalesce((SELECT max(utc_ms) FROM entry WHERE visit = v.number), v.began_utc_ms)
        )
    )
