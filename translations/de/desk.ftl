### Was feedside-desk am Stationsrechner sagt, je eine Zeile.

## Antworten auf einen Scan. $index und $count ganze Zahlen, $missing wie "2, 5", $number die Nummer eines Berichts.

# $many wie viele fehlen.
desk-piece = Teil { $index } von { $count } ist da. { $many ->
    [one] Scannen Sie jetzt Teil { $missing }.
   *[other] Scannen Sie jetzt die Teile { $missing }.
}
desk-piece-again = Teil { $index } von { $count } war schon da. { $many ->
    [one] Scannen Sie jetzt Teil { $missing }.
   *[other] Scannen Sie jetzt die Teile { $missing }.
}
desk-kept = Der Bericht liegt hier sicher als Nummer { $number }.
desk-kept-again = Der Bericht liegt hier schon als Nummer { $number }. Nichts wurde doppelt gespeichert.
desk-receipt = Quittung: Tippen Sie diese Zahl ins Tablet.
# $bed "Bay 2 bed 4", $initials "Q. Z.", $began Datum und Uhrzeit, $specialist ein Kürzel.
desk-record = { $bed }, { $initials }: Besuch vom { $began }, { $specialist }.
desk-reviews-now = { $count ->
    [one] Ein Befund verlangt jetzt eine ärztliche Beurteilung. Hausinterne Vorgaben und die Fachkraft entscheiden.
   *[other] { $count } Befunde verlangen jetzt eine ärztliche Beurteilung. Hausinterne Vorgaben und die Fachkraft entscheiden.
}
desk-not-signed = Der Besuch wurde nicht unterschrieben.
desk-replaced-by = Jetzt gilt Nummer { $number }.
desk-amends = Er ist ein Nachtrag zu einem früheren Besuch.
desk-still-missing = Noch nicht vollständig: Von { $count } Teilen { $many ->
    [one] fehlt noch Teil Nummer { $missing }
   *[other] fehlen noch die Teile Nummer { $missing }
}. Zeigen Sie sie am Tablet und scannen Sie sie. Von diesem Bericht wurde nichts gespeichert.

## Ein Tablet anmelden. $words sechs kurze Wörter, $name wie das Tablet hier heißt.

desk-tablet-asks = Ein Tablet möchte angemeldet werden. Seine sechs Wörter: { $words }.
desk-tablet-asks-do = Sind sie auf dem Tablet dieselben, melden Sie es mit „feedside-desk keys enrol“ an. Nichts wurde verändert.
desk-tablet-known = Das Tablet { $name } ist schon angemeldet. Seine sechs Wörter: { $words }.
desk-tablet-known-struck = Das Tablet { $name } wurde am { $since } gestrichen. Seine sechs Wörter: { $words }. Darf es wieder benutzt werden, melden Sie es mit „feedside-desk keys enrol“ an.
desk-tablet-struck = Das Tablet { $name } ist gestrichen. Von ihm wird nichts mehr angenommen; die Berichte, die es übergeben hat, bleiben. Löschen Sie das Tablet, wenn Sie es haben.
desk-tablet-compare = Vergleichen Sie diese sechs Wörter mit denen auf dem Tablet: { $words }
desk-tablet-confirm = Sind es dieselben? Tippen Sie „{ $yes }“:
desk-yes = ja
desk-tablet-scan = Scannen Sie den Schlüsselcode, den das Tablet unter Einstellungen zeigt.
desk-tablet-enrolled = Das Tablet { $name } ist angemeldet.
# $id die Kennung des Tablet-Schlüssels, $enrolled und $since Datum und Uhrzeit.
desk-tablet-line = { $id } { $name }: { $words }. Angemeldet { $enrolled }.
desk-tablet-line-struck = Gestrichen { $since }: Von ihm wird nichts angenommen.
desk-tablets-none = Hier ist kein Tablet angemeldet.

## Der Schlüssel des Stationsrechners.

desk-key-made = Ein neuer Schlüssel wurde erzeugt. Ältere Berichte bleiben lesbar.
desk-key-type = Tippen Sie diesen Schlüssel ins Tablet:
desk-key-words = Vergleichen Sie dann diese sechs Wörter auf beiden Seiten: { $words }
# $id die Kennung des Schlüssels, $since Datum und Uhrzeit, $tablet wie das Tablet hier heißt.
desk-key-line = { $id }, erzeugt { $made }: { $words }
desk-key-line-retired = Abgelöst { $since }: wird keinem Tablet mehr gegeben, öffnet weiter, was damit versiegelt wurde.
desk-key-retired = Der Schlüssel { $id } ist abgelöst. Er wird keinem Tablet mehr gegeben und öffnet weiter, was damit versiegelt wurde. Tippen Sie den jetzigen Schlüssel in jedes Tablet: „feedside-desk keys show“.
desk-key-was-retired = Er wurde mit einem Schlüssel versiegelt, der am { $since } abgelöst wurde. Tippen Sie den jetzigen Schlüssel ins Tablet { $tablet }: „feedside-desk keys show“.

## Der Testcode: was Scanner und Tastatur daraus machten. Je eine Zeile.

desk-scanner-plain = Tastatur: Die Ziffern kommen als Ziffern an.
# $keys zehn Zeichen.
desk-scanner-keys = Tastatur: Die Ziffern 0 bis 9 kommen als „{ $keys }“ an, durch die Tastaturbelegung oder die Feststelltaste. Nichts zu tun: Der Stationsrechner rückt das zurecht.
desk-scanner-no-prefix = Vor dem Code: nichts.
desk-scanner-prefix = Vor dem Code: „{ $prefix }“. Nichts zu tun: Der Stationsrechner übergeht es.
desk-scanner-no-suffix = Nach dem Code: nichts. Das geht; stellen Sie den Scanner wenn möglich auf Eingabetaste am Ende.
desk-scanner-enter = Nach dem Code: Eingabetaste.
desk-scanner-tab = Nach dem Code: Tabulatortaste. Das geht.
desk-scanner-suffix = Nach dem Code: „{ $suffix }“. Nichts zu tun: Der Stationsrechner übergeht es.
# $speed Zeichen je Sekunde, $seconds wie lange der größte Code dauert.
desk-scanner-speed = Tempo: { $speed } Zeichen je Sekunde; der größte Code dauert { $seconds } Sekunden.
desk-scanner-slow = Das ist langsam. Lassen Sie den Scanner ohne Pausen zwischen den Zeichen tippen oder schließen Sie ihn als serielle Schnittstelle an („--serial“).
desk-scanner-no-speed = Tempo: nicht gemessen, weil alles auf einmal kam.
# $digits, $lost, $doubled, $wrong wie viele; $first eine Stelle.
desk-scanner-all = Alle { $digits } Ziffern kamen an.
desk-scanner-loss = Von { $digits } Ziffern verloren: { $lost }, doppelt: { $doubled }, falsch: { $wrong }. Zuerst an Stelle { $first }.
# $version 15, 20 oder 25, wie in den Einstellungen des Tablets.
desk-scanner-good = Dieser Scanner ist brauchbar. In den Einstellungen des Tablets sind Codes bis Version { $version } möglich.
desk-scanner-bad = Wählen Sie noch keine Codes der Version { $version }. Lassen Sie den Scanner mit einer kurzen Pause zwischen den Zeichen tippen und scannen Sie den Testcode noch einmal; hilft das nicht, machen Sie einen kleineren Testcode.
desk-scanner-scan = Scannen Sie den Testcode. „feedside-desk scanner code“ macht einen.
desk-scanner-show = Testcode der Version { $version }. Er enthält nichts von irgendwem. Scannen Sie ihn, während „feedside-desk scanner test“ oder „feedside-desk listen“ läuft.

## Zuhören und auflisten.

desk-ready = Bereit zum Scannen. Scannen Sie nur, solange dieses Fenster vorn ist.
# $port der Name einer seriellen Schnittstelle.
desk-ready-serial = Bereit zum Scannen an { $port }.
desk-inbox-line = { $number }. { $record } Angekommen { $arrived } von { $tablet }. Quittung { $receipt }.
desk-inbox-none = Der Eingang ist leer.
desk-inbox-none-found = Kein Bericht enthält alle diese Wörter.
# $of eines der Wörter unten, $word ein Wort einer späteren Version.
desk-unknown-word = Zweifel: Dieser Stationsrechner kennt „{ $word }“ nicht ({ $of }). Lesen Sie es am Tablet oder installieren Sie die neuere Version.
desk-unknown-phase = Phase
desk-unknown-doubt = Zweifel
desk-unknown-level = Dringlichkeit
desk-unknown-unit = Einheit
desk-unknown-call = wer zu rufen ist
desk-written = Geschrieben nach { $file }.

## Senden. $number die Nummer eines Berichts, $place eine Adresse, $why einer der Gründe unten, $due Datum und Uhrzeit.

desk-sent = Bericht { $number } ist dort.
desk-sent-again = Bericht { $number } kam nicht an: { $why }. Neuer Versuch ab { $due }.
desk-sent-dead = Bericht { $number } kam nicht an: { $why }. Kein neuer Versuch, bevor jemand nachgesehen hat.
desk-sent-counts = { $place }: { $sent } dort, { $waiting } warten, { $dead } aufgegeben.
desk-queue-none = Nichts wartet auf das Senden.
desk-queue-waiting = Bericht { $number } an { $place }: wartet, Versuche { $tries }, { $why }. Weiter ab { $due }.
desk-queue-dead = Bericht { $number } an { $place }: AUFGEGEBEN, Versuche { $tries }, { $why }. Ist das behoben: „feedside-desk queue --again { $number }“.
desk-queue-not-tried = noch nicht versucht
desk-trouble-unreachable = nicht erreichbar
desk-trouble-silent = es kam keine Antwort in der Zeit
desk-trouble-garbage = die Antwort ergab keinen Sinn
desk-trouble-busy = kann ihn gerade nicht annehmen
desk-trouble-not-trusted = dem Zertifikat wird hier nicht vertraut
desk-trouble-not-let-in = lässt diesen Rechner nicht ein
desk-trouble-refused = hat den Bericht abgelehnt
desk-trouble-unreadable = der Bericht ist hier nicht lesbar
