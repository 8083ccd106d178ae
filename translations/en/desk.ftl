### What feedside-desk says on the ward's computer, a line each.

## Answers to a scan. $index and $count whole numbers, $missing as "2, 5", $number a record's number.

# $many how many are missing.
desk-piece = Piece { $index } of { $count } arrived. { $many ->
    [one] Now scan piece { $missing }.
   *[other] Now scan pieces { $missing }.
}
desk-piece-again = Piece { $index } of { $count } was here already. { $many ->
    [one] Now scan piece { $missing }.
   *[other] Now scan pieces { $missing }.
}
desk-kept = The record is safe here as number { $number }.
desk-kept-again = The record is here already as number { $number }. Nothing was stored twice.
desk-receipt = Receipt: type this number into the tablet.
# $bed "Bay 2 bed 4", $initials "Q. Z.", $began a date and time, $specialist a sign.
desk-record = { $bed }, { $initials }: visit of { $began } by { $specialist }.
desk-reviews-now = { $count ->
    [one] One finding asks for a medical review now. Local policy and the clinician decide.
   *[other] { $count } findings ask for a medical review now. Local policy and the clinician decide.
}
desk-not-signed = The visit was not signed.
desk-replaced-by = Number { $number } stands for it now.
desk-amends = It amends an earlier visit.
desk-still-missing = Not complete yet: of { $count } pieces, { $many ->
    [one] piece number { $missing } is
   *[other] the pieces number { $missing } are
} still missing. Show them on the tablet and scan them. Nothing of this record was stored.

## Enrolling a tablet. $words six short words, $name what the tablet is called here.

desk-tablet-asks = A tablet asks to be enrolled. Its six words: { $words }.
desk-tablet-asks-do = If they are the same on the tablet, enrol it with “feedside-desk keys enrol”. Nothing was changed.
desk-tablet-known = The tablet { $name } is enrolled already. Its six words: { $words }.
desk-tablet-known-struck = The tablet { $name } was struck off on { $since }. Its six words: { $words }. If it may be used again, enrol it with “feedside-desk keys enrol”.
desk-tablet-struck = The tablet { $name } is struck off. Nothing is taken from it any more; the records that it handed over stay. Wipe the tablet if you have it.
desk-tablet-compare = Compare these six words with those on the tablet: { $words }
desk-tablet-confirm = Are they the same? Type “{ $yes }”:
desk-yes = yes
desk-tablet-scan = Scan the key code that the tablet shows under Settings.
desk-tablet-enrolled = The tablet { $name } is enrolled.
# $id the id of the tablet's key, $enrolled and $since a date and time.
desk-tablet-line = { $id } { $name }: { $words }. Enrolled { $enrolled }.
desk-tablet-line-struck = Struck off { $since }: nothing is taken from it.
desk-tablets-none = No tablet is enrolled here.

## The desk's key.

desk-key-made = A new key was made. Older records stay readable.
desk-key-type = Type this key into the tablet:
desk-key-words = Then compare these six words on both sides: { $words }
# $id the key's id, $since a date and time, $tablet what the tablet is called here.
desk-key-line = { $id }, made { $made }: { $words }
desk-key-line-retired = Retired { $since }: no longer given to tablets, still opens what was sealed to it.
desk-key-retired = The key { $id } is retired. It is no longer given to tablets, and still opens what was sealed to it. Type the present key into each tablet: “feedside-desk keys show”.
desk-key-was-retired = It was sealed to a key that was retired on { $since }. Type the present key into the tablet { $tablet }: “feedside-desk keys show”.

## Listening and listing.

desk-ready = Ready to scan. Scan only while this window is in front.
desk-inbox-line = { $number }. { $record } Arrived { $arrived } from { $tablet }. Receipt { $receipt }.
desk-inbox-none = The inbox is empty.
# $of one of the words below, $word a word of a later version.
desk-unknown-word = Doubt: this desk does not know the { $of } “{ $word }”. Read it on the tablet, or install the newer version.
desk-unknown-phase = phase
desk-unknown-doubt = doubt
desk-unknown-level = level
desk-unknown-unit = unit
desk-unknown-call = person to call
desk-written = Written to { $file }.
