### Was im Fenster am Stationsrechner steht.

clerk-ready = Bereit zum Scannen
clerk-ready-do = Lassen Sie das Tablet den Code zeigen und scannen Sie ihn.
clerk-not-in-front = Hört nicht zu
clerk-not-in-front-do = Ein anderes Fenster hat die Tastatur: Was jetzt gescannt wird, landet dort. Klicken Sie zuerst in dieses Fenster.
clerk-reading = Liest …
clerk-reading-do = Lassen Sie dieses Fenster vorn, bis der Ton kommt.
clerk-no-key = Dieser Stationsrechner hat noch keinen Schlüssel
clerk-no-key-do = Machen Sie einen mit „feedside-desk keys new“ und tippen Sie ihn in jedes Tablet. Öffnen Sie dann dieses Fenster neu.
clerk-tablet-asks-do = Vergleichen Sie sie Wort für Wort mit denen auf dem Tablet selbst.
clerk-words-same = Die Wörter sind gleich
clerk-words-differ = Sie sind anders
clerk-not-enrolled = Das Tablet wurde nicht angemeldet. Sind die Wörter anders, sagen Sie es der Person, die die Tablets betreut.
clerk-name-line = Wie dieses Tablet hier heißt
clerk-name-do = Tippen Sie einen Namen und drücken Sie die Eingabetaste; Escape lässt das Tablet, wie es war.
clerk-receipt = Quittung: Tippen Sie diese Zahl ins Tablet.
clerk-no-receipt = Hier erscheint die Quittung des nächsten Berichts.
clerk-inbox = Eingang
clerk-search = Suchen
clerk-leave-search = Ganze Liste
clerk-search-line = Bett, Initialen, Kürzel, Quittung oder Tag
clerk-search-do = Sie können scannen, während Sie suchen.
# $arrived Datum und Uhrzeit, $tablet wie das Tablet hier heißt, $receipt zehn Ziffern.
clerk-arrived = Angekommen { $arrived } von { $tablet }. Quittung { $receipt }.
# $number die Nummer eines Berichts.
clerk-record = Bericht { $number }
clerk-print = Drucken
clerk-leave-page = Eingang
clerk-as-pdf = PDF
clerk-as-fhir = FHIR
clerk-as-document = FHIR, Dokument
clerk-as-hl7 = HL7
clerk-as-csv = Tabelle
clerk-as-note = Notiz
# $file der Name einer Datei.
clerk-written = Geschrieben nach { $file }. Die Datei enthält den Bericht einer Person: Löschen Sie sie, sobald sie ist, wo sie hingehört.
clerk-printed = Der Drucker hat es. Holen Sie das Blatt, bevor es jemand anderes tut.
clerk-no-printer = Von hier ist kein Drucker zu erreichen. Das Blatt liegt in { $file }: Öffnen und drucken Sie es dort, dann löschen Sie es.
clerk-caution = { frame-caution }
