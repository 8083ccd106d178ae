### What went wrong (`err-`) and what to do now (`rec-`), always in pairs. Shown in a banner on the
### tablet and in the desk's messages. Both of a pair together: at most about 300 characters.

## What is kept on this device. $file a file's name, $found and $known whole numbers, $why a sentence.

err-store-too-new = The data here was written by a newer version of Feedside (data version { $found }; this program knows { $known }).
rec-store-too-new = Install the newer version. The data was left as it is.
err-store-damaged-kept = The data file is damaged. It was set aside as { $file }; nothing was deleted.
rec-store-damaged-kept = Tell whoever looks after this device to keep that file. Open Feedside again to go on with an empty one.
err-store-damaged = The data file is damaged and could not be used just now.
rec-store-damaged = Note on paper what you see, then close Feedside and open it again.
err-store-not-ours = The file at this place belongs to another program.
rec-store-not-ours = Choose another folder for the data. The file was left as it is.
err-store-locked = Another program holds the data file, so this was not stored.
rec-store-locked = Close any other Feedside on this device and try again.
err-store-full = There is no room left on this device, so this was not stored.
rec-store-full = Make room on the device, then try again. Until then note on paper what you see.
err-store-no-access = The place for the data cannot be opened or written to.
rec-store-no-access = Check that the folder is there and that you may write to it, or choose another one.
err-store-disk = The device's storage failed, so this may not have been stored.
rec-store-disk = Note on paper what you see, and tell whoever looks after this device.
err-store-not-kept = What was looked for is not kept on this device.
rec-store-not-kept = Go back to the list and choose again.
err-store-refused = This would contradict what is already kept, so nothing was stored.
rec-store-refused = Close Feedside and open it again: it goes on from the last entry that is safe.
err-store-unreadable = Something that is kept here cannot be read. { $why }
rec-store-unreadable = Nothing was changed. Check for a newer version of Feedside, and tell whoever looks after this device.
err-store-sql = The database failed, so this may not have been stored.
rec-store-sql = Close Feedside and open it again. If it stays so, tell whoever looks after this device.

## A value that was refused. $what one of the names below, the others whole numbers.

err-record-out-of-range = { $what }: { $given } is outside { $low } to { $high }.
rec-record-out-of-range = Check the value and enter it again.
err-record-empty = { $what }: something is needed here.
rec-record-empty = Enter at least one character.
err-record-too-long = { $what }: no more than { $most } characters fit.
rec-record-too-long = Say it in fewer words.
err-record-not-printable = { $what }: some characters cannot be shown.
rec-record-not-printable = Take them out and try again.
err-record-out-of-order = An entry does not follow the one before it, so it was not added.
rec-record-out-of-order = Close Feedside and open it again: it goes on from the last entry that is safe.
err-record-nothing-to-strike = There is no such entry to take back.
rec-record-nothing-to-strike = Look at the list of entries and choose again.
err-record-already-signed = The visit is signed, so what was seen stays as it is.
rec-record-already-signed = Make an amendment to correct it.
err-record-unreadable = A stored entry cannot be read.
rec-record-unreadable = Check for a newer version of Feedside, and tell whoever looks after this device.
err-record-not-known = { $what }: this version does not know the value.
rec-record-not-known = Check for a newer version of Feedside.

## What a refused value is of. Stands at the start of a sentence.

value-other = A value
value-weight-in-grams = Weight in grams
value-volume-in-millilitres = Volume in millilitres
value-scale-step-in-grams = Step of the scale in grams
value-temperature-in-tenths-of-a-degree-celsius = Temperature in tenths of a degree
value-time = Time
value-offset = Offset from UTC in minutes
value-pain = Pain
value-days-of-gestation-past-the-week = Days of gestation past the week
value-gestation-in-days = Gestation in days
value-feeds = Feeds
value-wet-nappies = Wet nappies
value-dirty-nappies = Dirty nappies
value-hours-since-a-wet-nappy = Hours since a wet nappy
value-label = Short text
value-note = Note
value-language-tag = Language
value-sex = Sex
value-way-of-birth = Way of birth
value-risk-notes = Risk notes
value-reasons = Reasons for the call
value-milliseconds-since-the-visit-began = Time since the visit began

## A pair file that was refused. $path the field, as "weighings[2].grams"; numbers whole.

err-growth-too-large = The file has more than { $most } bytes.
rec-growth-too-large = Name a file of one pair.
err-growth-too-deep = { $path }: nested deeper than { $most }.
rec-growth-too-deep = Mend that field and run it again.
err-growth-too-many = { $path }: more than { $most } values come before it.
rec-growth-too-many = Name a file of one pair.
err-growth-not-json = In line { $line }, column { $column }, this is not JSON.
rec-growth-not-json = Mend that place and run it again.
err-growth-twice = { $path }: given twice.
rec-growth-twice = Take one of the two out and run it again.
err-growth-missing = { $path }: missing.
rec-growth-missing = Mend that field and run it again.
err-growth-not-known = { $path }: no such field is known.
rec-growth-not-known = Mend that field and run it again.
err-growth-needs = { $path }: { $needed } is needed.
rec-growth-needs = Mend that field and run it again.
err-growth-birth-in-future = { $path }: the birth lies in the future.
rec-growth-birth-in-future = Mend that field and run it again.
err-growth-before-birth = { $path }: this lies before the birth.
rec-growth-before-birth = Mend that field and run it again.
err-growth-in-future = { $path }: this lies in the future.
rec-growth-in-future = Mend that field and run it again.

## A ward policy that was refused. $line and $column whole numbers, $key as in the file.

err-policy-too-large = In line { $line }, column { $column }: the file has more than { $most } bytes.
rec-policy-too-large = Nothing of the file is used until that is mended.
err-policy-not-toml = In line { $line }, column { $column }: this is not TOML.
rec-policy-not-toml = Nothing of the file is used until that is mended.
err-policy-unknown-key = In line { $line }, column { $column }: { $key } is not known.
rec-policy-unknown-key = Nothing of the file is used until that is mended.
err-policy-missing = In line { $line }, column { $column }: { $key } is missing.
rec-policy-missing = Nothing of the file is used until that is mended.
err-policy-needs = In line { $line }, column { $column }: { $key } needs { $needed }.
rec-policy-needs = Nothing of the file is used until that is mended.
err-policy-out-of-bounds = In line { $line }, column { $column }: { $key } is { $given }; the published bounds are { $low } to { $high }.
rec-policy-out-of-bounds = Nothing of the file is used until that is mended.
err-policy-disordered = In line { $line }, column { $column }: { $lower } lies above { $higher }.
rec-policy-disordered = Nothing of the file is used until that is mended.

## What is needed in a field, within a sentence.

needed-object = an object
needed-list = a list
needed-time = a time as 2026-11-25T18:30:00+00:00
needed-yes-no = true or false
needed-whole = a whole number from { $low } to { $high }
needed-one-of = one of { $words }
needed-words = a list of words
needed-short-text = a short text
needed-language = a language tag as de
needed-id = an id of 32 hexadecimal digits
needed-policy-text = a text of 1 to 60 characters on one line
needed-policy-date = a date as 2026-11-25
needed-policy-table = a table
needed-policy-decimal = a number with one decimal
needed-policy-whole = a whole number

## The desk's own. $file a file's name, $number a record's number.

err-desk-not-set-up = This desk is not enrolled with any tablet: it has no key of its own yet. No record is shown.
rec-desk-not-set-up = Make a key with “feedside-desk keys new”, type it into the tablet, then enrol the tablet with “feedside-desk keys enrol”. Or check that the right data folder was named.
# $name what the tablet was called here, $since a date and time.
err-desk-tablet-struck-off = This record is from the tablet { $name }, which was struck off on { $since }. Nothing was stored.
rec-desk-tablet-struck-off = Ask whoever looks after the tablets. If it may be used again, enrol it with “feedside-desk keys enrol” and scan the codes again.
# $id and $which what was typed.
err-desk-no-such-key = There is not exactly one key whose id begins with { $id }.
rec-desk-no-such-key = List the keys with “feedside-desk keys list”, and type at least four characters of the id.
err-desk-only-key = This is the only key that tablets can be given. It was not retired.
rec-desk-only-key = Make another first with “feedside-desk keys new”.
err-desk-no-such-tablet = There is not exactly one enrolled tablet { $which }.
rec-desk-no-such-tablet = List the tablets with “feedside-desk keys tablets”, and type the name, or at least four characters of the id.
err-desk-no-such-record = There is no record { $number } here.
rec-desk-no-such-record = List the records with “feedside-desk inbox”.
err-desk-cannot-read = { $file } cannot be read.
rec-desk-cannot-read = Check the name, and that you may read it.
err-desk-not-a-picture = { $file } is not a picture that can be read (PNG or JPEG).
rec-desk-not-a-picture = Take the picture again, or save it as PNG or JPEG.
err-desk-no-code = No code was found in { $file }.
rec-desk-no-code = Take the picture again: straight on, sharp, with the whole code and its white border in it.
err-desk-cannot-write = { $file } cannot be written.
rec-desk-cannot-write = Choose another place with “--out”.
err-desk-no-tablet-key = That is not a tablet’s key.
rec-desk-no-tablet-key = Let the tablet show its key code under Settings, and scan that code.
err-desk-words-differ = The six words differ from those of the key that was scanned. The tablet was not enrolled.
rec-desk-words-differ = Compare them once more on the tablet itself. If they stay different, do not enrol it, and tell whoever looks after the tablets.
err-desk-not-confirmed = The tablet was not enrolled.
rec-desk-not-confirmed = Compare the six words with those on the tablet, and run the command again.
err-desk-no-random = This computer gave no random numbers, so no key was made.
rec-desk-no-random = Restart the computer and try again.
err-desk-no-clock = This computer’s clock is not set to a possible time.
rec-desk-no-clock = Set date and time and try again.
err-desk-no-folder = No folder for the data is known on this computer.
rec-desk-no-folder = Name one with “--data”.
err-desk-no-window = This program was made without the window.
rec-desk-no-window = Use “feedside-desk listen”, which does the same in lines, or install the program that has the window.
err-desk-no-display = There is no display here to open the window on.
rec-desk-no-display = Use “feedside-desk listen”, which does the same in lines.
# $port a serial port's name.
err-desk-no-serial = { $port } cannot be used as a serial port.
rec-desk-no-serial = Check that the scanner is plugged in and set to a serial port, the port’s name, and that you may use it.
err-desk-no-test-code = No test code was scanned.
rec-desk-no-test-code = Make one with “feedside-desk scanner code”, start “feedside-desk scanner test” again, and scan it while this window is in front.
err-desk-input = The scanner’s input broke off.
rec-desk-input = Start “feedside-desk listen” again and scan what is missing. What was stored is safe.
err-desk-server-address = The address of the inbox cannot be used.
rec-desk-server-address = Write it as “postgres://user@host/database”. A certificate file is named with “?sslrootcert=FILE”.
err-desk-server-unreachable = The inbox’s server cannot be reached, so this may not have been stored.
rec-desk-server-unreachable = Check the network, then scan again: nothing is stored twice. If it stays so, tell whoever looks after the server.
err-desk-server-login = The inbox’s server does not let this desk in.
rec-desk-server-login = Check user, password and database with whoever looks after the server.
err-desk-server-failed = The inbox’s server failed, so this may not have been stored.
rec-desk-server-failed = Scan again: nothing is stored twice. If it stays so, tell whoever looks after the server.
err-desk-place-address = The address to send to cannot be used.
rec-desk-place-address = Write it as “https://host/path”, or “host:port” for MLLP. A password does not belong in it: use “--token FILE”.
err-desk-place-needs-tls = That address has no encryption, so nothing was sent.
rec-desk-place-needs-tls = Use “https://”. Only if the network itself is protected, add “--without-tls”.
err-desk-no-certificate = The file of certificates holds none.
rec-desk-no-certificate = Name a file in PEM form, which has “BEGIN CERTIFICATE” in it.
err-desk-not-given-up = Record { $number } was not given up.
rec-desk-not-given-up = List what waits with “feedside-desk queue”.
# $line a line's number in the file.
err-desk-codes-header = The file of codes does not begin as such a file does.
rec-desk-codes-header = Its first line must be “ours,display,system,code,system_display”.
err-desk-codes-line = Line { $line } of the file of codes is not a code.
rec-desk-codes-line = It needs five cells: our code, its name, and either system, code and name there, or three empty ones. Quote a cell that holds a comma.
err-desk-codes-not-ours = Line { $line } of the file of codes is for something that no record has.
rec-desk-codes-not-ours = Compare its first cell with the codes in an export: it must be one of ours.
err-desk-codes-twice = Line { $line } of the file of codes says again, or otherwise, what an earlier line says.
rec-desk-codes-twice = Take one of the two lines out, or give both the same name.
err-desk-codes-too-long = The file of codes is too long.
rec-desk-codes-too-long = Check that it is the right file: at most one megabyte is read.
err-desk-not-laid-out = The record could not be laid out in this form.
rec-desk-not-laid-out = Try another form, and tell whoever looks after this computer.

## The lock of what is kept.

err-vault-wrong = That does not open it.
rec-vault-wrong = Look at the digits and type them again.
err-vault-wait = It is too early to try again.
rec-vault-wait = Wait as long as the screen says.
err-vault-device-gone = These data come from another device, or this one's own secret is gone, so that no PIN opens them.
rec-vault-device-gone = Type the rescue code that was written down when the PIN was set.
err-vault-keys-gone = The data here are encrypted, and the file of their keys is gone.
rec-vault-keys-gone = Nothing was changed. Tell whoever looks after this device to put back “feedside.keys” from where it was copied.
err-vault-keys-damaged = The file of the data's keys cannot be read.
rec-vault-keys-damaged = Nothing was changed. Tell whoever looks after this device to keep the whole folder.
err-vault-full = There is no room left on this device.
rec-vault-full = All is as it was. Make room on the device, then try again.
err-vault-no-random = The device gave no random numbers, so no key could be made.
rec-vault-no-random = All is as it was. Start the device again, then try once more.
