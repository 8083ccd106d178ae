## What can go wrong between the tablet and the desk.
## Seen on the Hand over screen, in Settings, and at the desk. err: what happened. rec: what to do.
## One or two short sentences each.

err-handover-not-ours = This is not one of our codes.
rec-handover-not-ours = Scan the code on the tablet's Hand over screen.

# $found: version number
err-handover-unknown-version = This code is of version { $found }, which this program does not know.
rec-handover-unknown-version = Bring tablet and desk to the same version, then show the codes again. The visit stays on the tablet.

err-handover-code-damaged = The code was not read whole.
rec-handover-code-damaged = Scan it again, straight on and a little further away.

# $piece: number of the code
err-handover-piece-damaged = Code { $piece } was read with a mistake.
rec-handover-piece-damaged = Scan this code again. What was read before is kept.

err-handover-piece-cut = Code { $piece } was read only in part.
rec-handover-piece-cut = Scan this code again and wait for the scanner's beep.

err-handover-piece-mixed = Code { $piece } does not belong with the others.
rec-handover-piece-mixed = Scan all codes of one visit from the first on.

err-handover-too-large = This is more than can be handed over by code.
rec-handover-too-large = Hand over without the single taps. If that is not enough, copy the summary by hand.

err-handover-not-for-this-desk = This record is sealed for another desk.
rec-handover-not-for-this-desk = Scan it at that desk, or choose this desk on the tablet and show the codes again.

err-handover-altered = This record was changed after the tablet sealed it.
rec-handover-altered = Nothing was stored. Show the codes on the tablet again; if it happens again, tell whoever looks after the desk.

err-handover-tablet-not-enrolled = This tablet is not enrolled at this desk.
rec-handover-tablet-not-enrolled = Enrol it first: scan its key code and compare the six words.

err-handover-signature-wrong = The signature does not fit this tablet and this desk.
rec-handover-signature-wrong = Nothing was stored. Show the codes on the tablet again; if it happens again, tell whoever looks after the desk.

err-handover-cannot-unpack = The record could not be unpacked.
rec-handover-cannot-unpack = Nothing was stored. Show the codes again, and bring tablet and desk to the same version.

err-handover-not-readable = The record could not be read.
rec-handover-not-readable = Nothing was lost: the visit stays on the tablet. Bring tablet and desk to the same version and try again.

err-handover-not-possible = The record holds a value that cannot be.
rec-handover-not-possible = Nothing was stored. Look through the visit on the tablet and show the codes again.

# $group: number of the group of characters
err-handover-key-group-wrong = Group { $group } of the key has a typing mistake.
rec-handover-key-group-wrong = Compare this group with the desk's screen and type it again.

# $given: how many characters were typed
err-handover-key-length-wrong = The key has { $given } characters; it needs 65.
rec-handover-key-length-wrong = Type all 13 groups of 5 characters.

err-handover-key-unusable = This key cannot be used.
rec-handover-key-unusable = Take the key from the desk's screen again, or make a new one there.

err-handover-note-empty = There is nothing to put into the note code.
rec-handover-note-empty = Write something first.

err-handover-note-too-long = The note has { $given } characters; the code holds 900.
rec-handover-note-too-long = Shorten it.

# $place: place of the character, from 1
err-handover-note-not-plain = Character { $place } of the note cannot be typed by a scanner.
rec-handover-note-not-plain = Write it with plain letters, digits and simple marks.

err-handover-read-back-failed = Code { $piece } did not read back as it was written.
rec-handover-read-back-failed = Nothing was shown. Try again; the visit stays on the tablet.
