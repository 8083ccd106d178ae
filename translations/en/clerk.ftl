### What stands in the desk's window on the ward's computer.

clerk-ready = Ready to scan
clerk-ready-do = Let the tablet show the code, and scan it.
clerk-not-in-front = Not listening
clerk-not-in-front-do = Another window has the keyboard: what is scanned now ends up there. Click into this window first.
clerk-reading = Reading …
clerk-reading-do = Keep this window in front until the sound comes.
clerk-no-key = This desk has no key yet
clerk-no-key-do = Make one with “feedside-desk keys new” and type it into each tablet. Then open this window again.
clerk-tablet-asks-do = Compare them with the words on the tablet itself, one by one.
clerk-words-same = The words are the same
clerk-words-differ = They differ
clerk-not-enrolled = The tablet was not enrolled. If the words differ, tell whoever looks after the tablets.
clerk-name-line = What this tablet is called here
clerk-name-do = Type a name and press Enter; Escape leaves the tablet as it was.
clerk-receipt = Receipt: type this number into the tablet.
clerk-no-receipt = The receipt of the next record appears here.
clerk-inbox = Inbox
clerk-search = Search
clerk-leave-search = Whole list
clerk-search-line = Bed, initials, specialist, receipt or day
clerk-search-do = A record can be scanned while you search.
# $arrived a date and time, $tablet what the tablet is called here, $receipt ten digits.
clerk-arrived = Arrived { $arrived } from { $tablet }. Receipt { $receipt }.
# $number a record's number.
clerk-record = Record { $number }
clerk-print = Print
clerk-leave-page = Inbox
clerk-as-pdf = PDF
clerk-as-fhir = FHIR
clerk-as-document = FHIR, document
clerk-as-hl7 = HL7
clerk-as-csv = Table
clerk-as-note = Note
# $file a file's name.
clerk-written = Written to { $file }. It holds a person’s record: delete it once it is where it belongs.
clerk-printed = The printer has it. Fetch the page before somebody else does.
clerk-no-printer = No printer can be reached from here. The page lies in { $file }: open and print it there, then delete it.
clerk-caution = { frame-caution }
