## The plan and the signature.

plan-title = Plan
plan-agreed = What is agreed
plan-usual = Usual for what was found
plan-usual-none = Nothing was found for which anything is usual.
plan-own-words = In your own words
plan-add = Add
plan-next-look = Next look
plan-in-hours = In { $hours } h
plan-due = Due { $time }
plan-notes = Notes
plan-note = A note for the record
plan-add-note = Add the note
plan-sign = Sign as { $by }
plan-signed = Signed by { $by }, { $time }
plan-to-codes = Show the codes
plan-trouble-running = A feed is still running. End it before signing.
plan-trouble-review = Medical review now is not acknowledged. Go to Looking back and acknowledge it.
plan-trouble-specialist = Enter your initials in Settings first.
plan-more = More
plan-until = Until then
plan-weigh = Put in a weight or a nappy
plan-sheet = Her sheet
