## Der Bildschirm Station: Paare nach dem, was ansteht.

ward-title = Station
ward-count = { $count } Paare, { $due } fällig, { $waiting } warten auf Quittung
ward-new-pair = Neues Paar
ward-settings = Einstellungen
ward-empty = Noch keine Paare.
ward-demo = Mit erfundener Station füllen
ward-demo-quiet = Zum Ausprobieren. Keine echten Personen.
ward-due-now = Fällig seit { $time }
ward-due-at = Nächste Kontrolle { $time }
ward-not-seen = Noch nicht gesehen
ward-no-next-look = Keine Kontrolle geplant
ward-waiting-receipt = Wartet auf Quittung
ward-visit-open = Besuch offen
# Was zuletzt gefunden wurde: { $level } "Heute handeln", { $rule } "Großer Gewichtsverlust", { $count } weitere Regeln, die ärztliche Hilfe verlangen.
ward-found = { $count ->
    [0] { $level }: { $rule }
   *[other] { $level }: { $rule }, und { $count } weitere
}
# Was schlechter wurde; { $before } die Stufe beim Besuch davor, "Weiter beobachten"; { $grams } "−87".
ward-worse = Schlechter: beim Besuch davor „{ $before }“
ward-falls = Gewicht fällt weiter: { $grams } g in { $hours } h
ward-no-pin = Keine PIN ist festgelegt: Wer dieses Tablet in der Hand hat, kann alles lesen, was darauf ist. Legen Sie in den Einstellungen eine fest, bevor das erste wirkliche Paar kommt.
ward-month = Monat
