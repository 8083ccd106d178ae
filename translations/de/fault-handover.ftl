## Was zwischen Tablet und Stationsrechner schiefgehen kann.
## Zu sehen auf dem Bildschirm „Übergabe“, in den Einstellungen und am Stationsrechner.
## err: was geschehen ist. rec: was zu tun ist. Je ein oder zwei kurze Sätze.

err-handover-not-ours = Das ist keiner unserer Codes.
rec-handover-not-ours = Den Code auf dem Tablet unter „Übergabe“ scannen.

# $found: Versionsnummer
err-handover-unknown-version = Dieser Code hat die Version { $found }, die dieses Programm nicht kennt.
rec-handover-unknown-version = Tablet und Stationsrechner auf dieselbe Version bringen und die Codes neu zeigen. Der Besuch bleibt auf dem Tablet.

err-handover-code-damaged = Der Code wurde nicht ganz gelesen.
rec-handover-code-damaged = Noch einmal scannen, gerade und mit etwas mehr Abstand.

# $piece: Nummer des Codes
err-handover-piece-damaged = Code { $piece } wurde mit einem Fehler gelesen.
rec-handover-piece-damaged = Diesen Code noch einmal scannen. Das bisher Gelesene bleibt erhalten.

err-handover-piece-cut = Code { $piece } wurde nur zum Teil gelesen.
rec-handover-piece-cut = Diesen Code noch einmal scannen und den Ton des Scanners abwarten.

err-handover-piece-mixed = Code { $piece } gehört nicht zu den anderen.
rec-handover-piece-mixed = Alle Codes eines Besuchs vom ersten an scannen.

err-handover-too-large = Das ist mehr, als mit Codes übergeben werden kann.
rec-handover-too-large = Ohne die einzelnen Tippeingaben übergeben. Reicht das nicht, die Zusammenfassung von Hand übertragen.

err-handover-not-for-this-desk = Dieser Bericht ist für einen anderen Stationsrechner versiegelt.
rec-handover-not-for-this-desk = Dort scannen, oder auf dem Tablet diesen Stationsrechner wählen und die Codes neu zeigen.

err-handover-altered = Dieser Bericht wurde nach dem Versiegeln verändert.
rec-handover-altered = Nichts wurde gespeichert. Die Codes auf dem Tablet neu zeigen; geschieht es wieder, die Betreuung des Stationsrechners verständigen.

err-handover-tablet-not-enrolled = Dieses Tablet ist hier nicht angemeldet.
rec-handover-tablet-not-enrolled = Zuerst anmelden: den Schlüssel-Code scannen und die sechs Wörter vergleichen.

err-handover-signature-wrong = Die Unterschrift passt nicht zu diesem Tablet und diesem Stationsrechner.
rec-handover-signature-wrong = Nichts wurde gespeichert. Die Codes auf dem Tablet neu zeigen; geschieht es wieder, die Betreuung des Stationsrechners verständigen.

err-handover-cannot-unpack = Der Bericht ließ sich nicht entpacken.
rec-handover-cannot-unpack = Nichts wurde gespeichert. Die Codes neu zeigen und Tablet und Stationsrechner auf dieselbe Version bringen.

err-handover-not-readable = Der Bericht ließ sich nicht lesen.
rec-handover-not-readable = Nichts ist verloren: Der Besuch bleibt auf dem Tablet. Tablet und Stationsrechner auf dieselbe Version bringen und neu versuchen.

err-handover-not-possible = Der Bericht enthält einen unmöglichen Wert.
rec-handover-not-possible = Nichts wurde gespeichert. Den Besuch auf dem Tablet durchsehen und die Codes neu zeigen.

# $group: Nummer der Zeichengruppe
err-handover-key-group-wrong = Gruppe { $group } des Schlüssels hat einen Tippfehler.
rec-handover-key-group-wrong = Diese Gruppe mit dem Bildschirm am Stationsrechner vergleichen und neu eingeben.

# $given: Zahl der eingegebenen Zeichen
err-handover-key-length-wrong = Der Schlüssel hat { $given } Zeichen; nötig sind 65.
rec-handover-key-length-wrong = Alle 13 Gruppen zu 5 Zeichen eingeben.

err-handover-key-unusable = Dieser Schlüssel ist nicht brauchbar.
rec-handover-key-unusable = Den Schlüssel neu vom Bildschirm am Stationsrechner nehmen oder dort einen neuen anlegen.

err-handover-note-empty = Für den Notiz-Code ist kein Text da.
rec-handover-note-empty = Zuerst etwas schreiben.

err-handover-note-too-long = Die Notiz hat { $given } Zeichen; der Code fasst 900.
rec-handover-note-too-long = Kürzen.

# $place: Stelle des Zeichens, von 1 an
err-handover-note-not-plain = Zeichen { $place } der Notiz kann ein Scanner nicht tippen.
rec-handover-note-not-plain = Mit einfachen Buchstaben, Ziffern und Zeichen schreiben.

err-handover-read-back-failed = Code { $piece } ließ sich nicht so zurücklesen, wie er geschrieben wurde.
rec-handover-read-back-failed = Nichts wurde gezeigt. Neu versuchen; der Besuch bleibt auf dem Tablet.
