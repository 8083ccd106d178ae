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

## The test code: what the scanner and the keyboard made of it. A line each.

desk-scanner-plain = Keyboard: the digits arrive as digits.
# $keys ten characters.
desk-scanner-keys = Keyboard: the digits 0 to 9 arrive as “{ $keys }”, by the keyboard layout or Caps Lock. Nothing to do: the desk puts that right.
desk-scanner-no-prefix = Before the code: nothing.
desk-scanner-prefix = Before the code: “{ $prefix }”. Nothing to do: the desk passes over it.
desk-scanner-no-suffix = After the code: nothing. That works; set the scanner to end with Enter if you can.
desk-scanner-enter = After the code: Enter.
desk-scanner-tab = After the code: the tab key. That works.
desk-scanner-suffix = After the code: “{ $suffix }”. Nothing to do: the desk passes over it.
# $speed characters a second, $seconds how long the largest code takes.
desk-scanner-speed = Speed: { $speed } characters a second; the largest code takes { $seconds } seconds.
desk-scanner-slow = That is slow. Let the scanner type without pauses between characters, or connect it as a serial port (“--serial”).
desk-scanner-no-speed = Speed: not measured, because all came at once.
# $digits, $lost, $doubled, $wrong how many; $first a place.
desk-scanner-all = All { $digits } digits arrived.
desk-scanner-loss = Of { $digits } digits lost: { $lost }, doubled: { $doubled }, wrong: { $wrong }. The first at place { $first }.
# $version 15, 20 or 25, as in the tablet's settings.
desk-scanner-good = This scanner can be used. In the tablet’s settings, codes up to version { $version } can be chosen.
desk-scanner-bad = Do not choose codes of version { $version } yet. Let the scanner type with a short pause between characters, then scan the test code again; if that does not help, make a smaller test code.
desk-scanner-scan = Scan the test code. “feedside-desk scanner code” makes one.
desk-scanner-show = Test code of version { $version }. It holds nothing of anybody. Scan it while “feedside-desk scanner test” or “feedside-desk listen” runs.

## Listening and listing.

desk-ready = Ready to scan. Scan only while this window is in front.
# $port a serial port's name.
desk-ready-serial = Ready to scan on { $port }.
desk-inbox-line = { $number }. { $record } Arrived { $arrived } from { $tablet }. Receipt { $receipt }.
desk-inbox-none = The inbox is empty.
desk-inbox-none-found = No record has all these words.
# $of one of the words below, $word a word of a later version.
desk-unknown-word = Doubt: this desk does not know the { $of } “{ $word }”. Read it on the tablet, or install the newer version.
desk-unknown-phase = phase
desk-unknown-doubt = doubt
desk-unknown-level = level
desk-unknown-unit = unit
desk-unknown-call = person to call
desk-written = Written to { $file }.

## Sending. $number a record's number, $place an address, $why one of the reasons below, $due a date and time.

desk-sent = Record { $number } is there.
desk-sent-again = Record { $number } did not get there: { $why }. It is tried again from { $due } on.
desk-sent-dead = Record { $number } did not get there: { $why }. It is not tried again until a person has looked at it.
desk-sent-counts = { $place }: { $sent } there, { $waiting } waiting, { $dead } given up.
desk-queue-none = Nothing waits to be sent.
desk-queue-waiting = Record { $number } to { $place }: waiting, tries { $tries }, { $why }. Next from { $due } on.
desk-queue-dead = Record { $number } to { $place }: GIVEN UP, tries { $tries }, { $why }. When that is mended: “feedside-desk queue --again { $number }”.
desk-queue-not-tried = not tried yet
desk-trouble-unreachable = it cannot be reached
desk-trouble-silent = no answer came in time
desk-trouble-garbage = the answer made no sense
desk-trouble-busy = it cannot take it for now
desk-trouble-not-trusted = its certificate is not trusted here
desk-trouble-not-let-in = it does not let this desk in
desk-trouble-refused = it refused the record
desk-trouble-unreadable = the record cannot be read here
