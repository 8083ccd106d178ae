## Handing over to the desk.

handover-title = Hand over
handover-previous = Back one
handover-next = Next
handover-which = Which code
handover-record = Record for the desk
handover-with-taps = With every tap
handover-note = Note to scan into the notes
handover-piece = { $index } of { $count }
handover-code-label = Code { $index } of { $count }
handover-note-label = Note code
handover-record-quiet = Sealed: only the desk can read it. Let the desk scan each code until it shows the receipt.
handover-note-warning = Anyone can read this code. It holds no name. Scan it only while the notes field is ready.
handover-receipt = Receipt from the desk
handover-receipt-type = Type the ten digits that the desk shows.
handover-receipt-taken = The desk has it. Handed over.
handover-receipt-slip = There is a slip in the digits. Compare them with the desk's screen.
handover-receipt-other = This receipt is not for this record. Ask the desk to scan it again.
handover-delete = Delete
handover-take = Accept
handover-amend = Amend
handover-no-desk = No desk key yet. Type it in Settings, then come back.
handover-not-signed = The visit is not signed yet.
handover-failed = The codes could not be made: { $why }
