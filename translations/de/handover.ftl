## Übergabe an den Stationsrechner.

handover-title = Übergabe
handover-previous = Voriger
handover-next = Nächster
handover-which = Welcher Code
handover-record = Bericht für den Stationsrechner
handover-with-taps = Mit jedem Tippen
handover-note = Notiz zum Einscannen
handover-piece = { $index } von { $count }
handover-code-label = Code { $index } von { $count }
handover-note-label = Notizcode
handover-record-quiet = Versiegelt: Nur der Stationsrechner kann ihn lesen. Jeden Code scannen lassen, bis dort die Quittung erscheint.
handover-note-warning = Jeder kann diesen Code lesen. Er enthält keinen Namen. Nur scannen, wenn das Notizfeld bereit ist.
handover-receipt = Quittung vom Stationsrechner
handover-receipt-type = Die zehn Ziffern eingeben, die der Stationsrechner zeigt.
handover-receipt-taken = Der Stationsrechner hat ihn. Übergeben.
handover-receipt-slip = Ein Vertipper in den Ziffern. Bitte mit dem Stationsrechner vergleichen.
handover-receipt-other = Diese Quittung gehört nicht zu diesem Bericht. Bitte dort noch einmal scannen lassen.
handover-delete = Löschen
handover-take = Annehmen
handover-amend = Berichtigen
handover-no-desk = Noch kein Schlüssel des Stationsrechners. Bitte in den Einstellungen angeben, dann zurückkommen.
handover-not-signed = Der Besuch ist noch nicht unterschrieben.
handover-failed = Die Codes konnten nicht gemacht werden: { $why }
