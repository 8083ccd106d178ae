## Der Plan und die Unterschrift.

plan-title = Plan
plan-agreed = Was vereinbart ist
plan-usual = Üblich bei dem, was gefunden wurde
plan-usual-none = Nichts gefunden, wofür etwas üblich wäre.
plan-own-words = Mit eigenen Worten
plan-add = Hinzufügen
plan-next-look = Nächste Kontrolle
plan-in-hours = In { $hours } h
plan-due = Fällig { $time }
plan-notes = Notizen
plan-note = Eine Notiz für den Bericht
plan-add-note = Notiz hinzufügen
plan-sign = Unterschreiben als { $by }
plan-signed = Unterschrieben von { $by }, { $time }
plan-to-codes = Codes zeigen
plan-trouble-running = Eine Mahlzeit läuft noch. Bitte zuerst beenden.
plan-trouble-review = „Sofort ärztlich beurteilen“ ist nicht zur Kenntnis genommen. Bitte im Rückblick nachholen.
plan-trouble-specialist = Bitte zuerst in den Einstellungen das eigene Kürzel angeben.
plan-more = Mehr
plan-until = Bis dahin
plan-weigh = Gewicht oder Windel eintragen
plan-sheet = Merkblatt
