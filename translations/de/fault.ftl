### Was schiefging (`err-`) und was jetzt zu tun ist (`rec-`), immer zu zweit. Steht in einem Balken
### auf dem Tablet und in den Meldungen des Stationsrechners. Beide zusammen: höchstens etwa 300 Zeichen.

## Was auf diesem Gerät aufbewahrt ist. $file ein Dateiname, $found und $known ganze Zahlen, $why ein Satz.

err-store-too-new = Die Daten hier hat eine neuere Version von Feedside geschrieben (Datenversion { $found }; dieses Programm kennt { $known }).
rec-store-too-new = Installieren Sie die neuere Version. Die Daten blieben, wie sie sind.
err-store-damaged-kept = Die Datendatei ist beschädigt. Sie wurde als { $file } beiseitegelegt; nichts wurde gelöscht.
rec-store-damaged-kept = Bitten Sie, wer dieses Gerät betreut, die Datei aufzuheben. Öffnen Sie Feedside neu, um mit einer leeren weiterzumachen.
err-store-damaged = Die Datendatei ist beschädigt und war eben nicht zu gebrauchen.
rec-store-damaged = Notieren Sie auf Papier, was Sie sehen, schließen Sie dann Feedside und öffnen Sie es neu.
err-store-not-ours = Die Datei an dieser Stelle gehört einem anderen Programm.
rec-store-not-ours = Wählen Sie einen anderen Ordner für die Daten. Die Datei blieb, wie sie ist.
err-store-locked = Ein anderes Programm hält die Datendatei fest, darum wurde dies nicht gespeichert.
rec-store-locked = Schließen Sie jedes andere Feedside auf diesem Gerät und versuchen Sie es noch einmal.
err-store-full = Auf diesem Gerät ist kein Platz mehr, darum wurde dies nicht gespeichert.
rec-store-full = Schaffen Sie Platz und versuchen Sie es noch einmal. Notieren Sie bis dahin auf Papier, was Sie sehen.
err-store-no-access = Der Ort für die Daten lässt sich nicht öffnen oder nicht beschreiben.
rec-store-no-access = Prüfen Sie, ob es den Ordner gibt und ob Sie hineinschreiben dürfen, oder wählen Sie einen anderen.
err-store-disk = Der Speicher des Geräts hat versagt; vielleicht wurde dies nicht gespeichert.
rec-store-disk = Notieren Sie auf Papier, was Sie sehen, und sagen Sie es, wer dieses Gerät betreut.
err-store-not-kept = Was gesucht wurde, ist auf diesem Gerät nicht vorhanden.
rec-store-not-kept = Gehen Sie zurück zur Liste und wählen Sie neu.
err-store-refused = Dies widerspräche dem, was schon gespeichert ist, darum wurde nichts gespeichert.
rec-store-refused = Schließen Sie Feedside und öffnen Sie es neu: Es geht beim letzten sicheren Eintrag weiter.
err-store-unreadable = Etwas Gespeichertes ist nicht lesbar. { $why }
rec-store-unreadable = Nichts wurde verändert. Suchen Sie nach einer neueren Version von Feedside und sagen Sie es, wer dieses Gerät betreut.
err-store-sql = Die Datenbank hat versagt; vielleicht wurde dies nicht gespeichert.
rec-store-sql = Schließen Sie Feedside und öffnen Sie es neu. Bleibt es so, sagen Sie es, wer dieses Gerät betreut.

## Ein Wert, der abgelehnt wurde. $what eine der Bezeichnungen unten, das Übrige ganze Zahlen.

err-record-out-of-range = { $what }: { $given } liegt außerhalb von { $low } bis { $high }.
rec-record-out-of-range = Prüfen Sie den Wert und geben Sie ihn neu ein.
err-record-empty = { $what }: Hier fehlt eine Angabe.
rec-record-empty = Geben Sie mindestens ein Zeichen ein.
err-record-too-long = { $what }: Mehr als { $most } Zeichen passen nicht.
rec-record-too-long = Sagen Sie es mit weniger Worten.
err-record-not-printable = { $what }: Einige Zeichen lassen sich nicht darstellen.
rec-record-not-printable = Nehmen Sie sie heraus und versuchen Sie es noch einmal.
err-record-out-of-order = Ein Eintrag schließt nicht an den vorigen an, darum wurde er nicht angefügt.
rec-record-out-of-order = Schließen Sie Feedside und öffnen Sie es neu: Es geht beim letzten sicheren Eintrag weiter.
err-record-nothing-to-strike = Es gibt keinen solchen Eintrag, der sich zurücknehmen ließe.
rec-record-nothing-to-strike = Sehen Sie in die Liste der Einträge und wählen Sie neu.
err-record-already-signed = Der Besuch ist unterschrieben; was gesehen wurde, bleibt, wie es ist.
rec-record-already-signed = Berichtigen Sie ihn mit einem Nachtrag.
err-record-unreadable = Ein gespeicherter Eintrag ist nicht lesbar.
rec-record-unreadable = Suchen Sie nach einer neueren Version von Feedside und sagen Sie es, wer dieses Gerät betreut.
err-record-not-known = { $what }: Diese Version kennt den Wert nicht.
rec-record-not-known = Suchen Sie nach einer neueren Version von Feedside.

## Wovon ein abgelehnter Wert ist. Steht am Satzanfang.

value-other = Ein Wert
value-weight-in-grams = Gewicht in Gramm
value-volume-in-millilitres = Menge in Milliliter
value-scale-step-in-grams = Teilung der Waage in Gramm
value-temperature-in-tenths-of-a-degree-celsius = Temperatur in Zehntelgrad
value-time = Zeitpunkt
value-offset = Abstand zu UTC in Minuten
value-pain = Schmerz
value-days-of-gestation-past-the-week = Tage der Schwangerschaft über die Woche hinaus
value-gestation-in-days = Schwangerschaftsdauer in Tagen
value-feeds = Mahlzeiten
value-wet-nappies = Nasse Windeln
value-dirty-nappies = Stuhlwindeln
value-hours-since-a-wet-nappy = Stunden seit einer nassen Windel
value-label = Kurzer Text
value-note = Notiz
value-language-tag = Sprache
value-sex = Geschlecht
value-way-of-birth = Geburtsmodus
value-risk-notes = Risiken
value-reasons = Gründe für den Ruf
value-milliseconds-since-the-visit-began = Zeit seit Beginn des Besuchs

## Eine abgelehnte Datei eines Paars. $path das Feld, wie "weighings[2].grams"; ganze Zahlen.

err-growth-too-large = Die Datei hat mehr als { $most } Bytes.
rec-growth-too-large = Eine Datei mit einem Paar angeben.
err-growth-too-deep = { $path }: tiefer als { $most } verschachtelt.
rec-growth-too-deep = Dieses Feld berichtigen und noch einmal starten.
err-growth-too-many = { $path }: davor stehen schon mehr als { $most } Werte.
rec-growth-too-many = Eine Datei mit einem Paar angeben.
err-growth-not-json = In Zeile { $line }, Spalte { $column } ist das kein JSON.
rec-growth-not-json = Diese Stelle berichtigen und noch einmal starten.
err-growth-twice = { $path }: zweimal angegeben.
rec-growth-twice = Eine der beiden Angaben entfernen und noch einmal starten.
err-growth-missing = { $path }: fehlt.
rec-growth-missing = Dieses Feld berichtigen und noch einmal starten.
err-growth-not-known = { $path }: ein solches Feld ist nicht bekannt.
rec-growth-not-known = Dieses Feld berichtigen und noch einmal starten.
err-growth-needs = { $path }: nötig ist { $needed }.
rec-growth-needs = Dieses Feld berichtigen und noch einmal starten.
err-growth-birth-in-future = { $path }: die Geburt liegt in der Zukunft.
rec-growth-birth-in-future = Dieses Feld berichtigen und noch einmal starten.
err-growth-before-birth = { $path }: das liegt vor der Geburt.
rec-growth-before-birth = Dieses Feld berichtigen und noch einmal starten.
err-growth-in-future = { $path }: das liegt in der Zukunft.
rec-growth-in-future = Dieses Feld berichtigen und noch einmal starten.

## Abgelehnte Stationsregeln. $line und $column ganze Zahlen, $key wie in der Datei.

err-policy-too-large = In Zeile { $line }, Spalte { $column }: die Datei hat mehr als { $most } Bytes.
rec-policy-too-large = Nichts aus der Datei wird verwendet, bis das berichtigt ist.
err-policy-not-toml = In Zeile { $line }, Spalte { $column }: das ist kein TOML.
rec-policy-not-toml = Nichts aus der Datei wird verwendet, bis das berichtigt ist.
err-policy-unknown-key = In Zeile { $line }, Spalte { $column }: { $key } ist nicht bekannt.
rec-policy-unknown-key = Nichts aus der Datei wird verwendet, bis das berichtigt ist.
err-policy-missing = In Zeile { $line }, Spalte { $column }: { $key } fehlt.
rec-policy-missing = Nichts aus der Datei wird verwendet, bis das berichtigt ist.
err-policy-needs = In Zeile { $line }, Spalte { $column }: für { $key } ist { $needed } nötig.
rec-policy-needs = Nichts aus der Datei wird verwendet, bis das berichtigt ist.
err-policy-out-of-bounds = In Zeile { $line }, Spalte { $column }: { $key } ist { $given }; die veröffentlichte Spanne ist { $low } bis { $high }.
rec-policy-out-of-bounds = Nichts aus der Datei wird verwendet, bis das berichtigt ist.
err-policy-disordered = In Zeile { $line }, Spalte { $column }: { $lower } liegt über { $higher }.
rec-policy-disordered = Nichts aus der Datei wird verwendet, bis das berichtigt ist.

## Was in einem Feld nötig ist, in einem Satz.

needed-object = ein Objekt
needed-list = eine Liste
needed-time = eine Zeit wie 2026-11-25T18:30:00+00:00
needed-yes-no = true oder false
needed-whole = eine ganze Zahl von { $low } bis { $high }
needed-one-of = eines von { $words }
needed-words = eine Liste von Wörtern
needed-short-text = ein kurzer Text
needed-language = eine Sprachkennung wie de
needed-id = eine Kennung aus 32 Hexadezimalziffern
needed-policy-text = ein einzeiliger Text von 1 bis 60 Zeichen
needed-policy-date = ein Datum wie 2026-11-25
needed-policy-table = eine Tabelle
needed-policy-decimal = eine Zahl mit einer Nachkommastelle
needed-policy-whole = eine ganze Zahl

## Eigenes des Stationsrechners (im Englischen: desk). $file ein Dateiname, $number die Nummer eines Berichts.

err-desk-not-set-up = Dieser Stationsrechner ist mit keinem Tablet verbunden: Er hat noch keinen eigenen Schlüssel. Es wird kein Bericht gezeigt.
rec-desk-not-set-up = Erzeugen Sie mit „feedside-desk keys new“ einen Schlüssel, tippen Sie ihn ins Tablet und melden Sie das Tablet mit „feedside-desk keys enrol“ an. Oder prüfen Sie, ob der richtige Datenordner genannt ist.
# $name wie das Tablet hier hieß, $since Datum und Uhrzeit.
err-desk-tablet-struck-off = Dieser Bericht kommt vom Tablet { $name }, das am { $since } gestrichen wurde. Nichts wurde gespeichert.
rec-desk-tablet-struck-off = Fragen Sie, wer die Tablets betreut. Darf es wieder benutzt werden, melden Sie es mit „feedside-desk keys enrol“ an und scannen Sie die Codes noch einmal.
# $id und $which wie getippt.
err-desk-no-such-key = Es gibt nicht genau einen Schlüssel, dessen Kennung mit { $id } beginnt.
rec-desk-no-such-key = Listen Sie die Schlüssel mit „feedside-desk keys list“ auf und tippen Sie mindestens vier Zeichen der Kennung.
err-desk-only-key = Das ist der einzige Schlüssel, den Tablets bekommen können. Er wurde nicht abgelöst.
rec-desk-only-key = Erzeugen Sie zuerst einen neuen mit „feedside-desk keys new“.
err-desk-no-such-tablet = Es gibt nicht genau ein angemeldetes Tablet { $which }.
rec-desk-no-such-tablet = Listen Sie die Tablets mit „feedside-desk keys tablets“ auf und tippen Sie den Namen oder mindestens vier Zeichen der Kennung.
err-desk-no-such-record = Einen Bericht { $number } gibt es hier nicht.
rec-desk-no-such-record = Listen Sie die Berichte mit „feedside-desk inbox“ auf.
err-desk-cannot-read = { $file } lässt sich nicht lesen.
rec-desk-cannot-read = Prüfen Sie den Namen und ob Sie die Datei lesen dürfen.
err-desk-not-a-picture = { $file } ist kein lesbares Bild (PNG oder JPEG).
rec-desk-not-a-picture = Nehmen Sie das Bild neu auf oder speichern Sie es als PNG oder JPEG.
err-desk-no-code = In { $file } wurde kein Code gefunden.
rec-desk-no-code = Nehmen Sie das Bild neu auf: gerade, scharf, mit dem ganzen Code und seinem weißen Rand.
err-desk-cannot-write = { $file } lässt sich nicht schreiben.
rec-desk-cannot-write = Wählen Sie mit „--out“ einen anderen Ort.
err-desk-no-tablet-key = Das ist kein Schlüssel eines Tablets.
rec-desk-no-tablet-key = Lassen Sie das Tablet unter Einstellungen seinen Schlüsselcode zeigen und scannen Sie diesen.
err-desk-words-differ = Die sechs Wörter weichen von denen des gescannten Schlüssels ab. Das Tablet wurde nicht angemeldet.
rec-desk-words-differ = Vergleichen Sie sie noch einmal am Tablet selbst. Bleiben sie verschieden, melden Sie es nicht an und sagen Sie es, wer die Tablets betreut.
err-desk-not-confirmed = Das Tablet wurde nicht angemeldet.
rec-desk-not-confirmed = Vergleichen Sie die sechs Wörter mit denen auf dem Tablet und rufen Sie den Befehl neu auf.
err-desk-no-random = Dieser Computer gab keine Zufallszahlen her, darum wurde kein Schlüssel erzeugt.
rec-desk-no-random = Starten Sie den Computer neu und versuchen Sie es noch einmal.
err-desk-no-clock = Die Uhr dieses Computers steht auf keiner möglichen Zeit.
rec-desk-no-clock = Stellen Sie Datum und Uhrzeit und versuchen Sie es noch einmal.
err-desk-no-folder = Auf diesem Computer ist kein Ordner für die Daten bekannt.
rec-desk-no-folder = Nennen Sie einen mit „--data“.
err-desk-no-window = Dieses Programm wurde ohne das Fenster gebaut.
rec-desk-no-window = Nehmen Sie „feedside-desk listen“, das dasselbe in Zeilen tut, oder installieren Sie das Programm mit dem Fenster.
err-desk-no-display = Hier ist kein Bildschirm, auf dem sich das Fenster öffnen ließe.
rec-desk-no-display = Nehmen Sie „feedside-desk listen“, das dasselbe in Zeilen tut.
# $port der Name einer seriellen Schnittstelle.
err-desk-no-serial = { $port } ist nicht als serielle Schnittstelle zu gebrauchen.
rec-desk-no-serial = Prüfen Sie, ob der Scanner eingesteckt und auf serielle Schnittstelle gestellt ist, wie sie heißt, und ob Sie sie benutzen dürfen.
err-desk-no-test-code = Es wurde kein Testcode gescannt.
rec-desk-no-test-code = Machen Sie einen mit „feedside-desk scanner code“, starten Sie „feedside-desk scanner test“ noch einmal und scannen Sie ihn, während dieses Fenster vorn ist.
err-desk-input = Die Eingabe des Scanners brach ab.
rec-desk-input = Starten Sie „feedside-desk listen“ neu und scannen Sie, was fehlt. Was gespeichert wurde, ist sicher.
err-desk-server-address = Die Adresse des Eingangs ist nicht brauchbar.
rec-desk-server-address = Schreiben Sie sie als „postgres://user@host/database“. Eine Zertifikatsdatei wird mit „?sslrootcert=DATEI“ genannt.
err-desk-server-unreachable = Der Server des Eingangs ist nicht erreichbar, daher ist dies vielleicht nicht gespeichert.
rec-desk-server-unreachable = Prüfen Sie das Netz und scannen Sie noch einmal: Nichts wird doppelt gespeichert. Bleibt es so, sagen Sie es der Person, die den Server betreut.
err-desk-server-login = Der Server des Eingangs lässt diesen Rechner nicht ein.
rec-desk-server-login = Prüfen Sie Benutzer, Kennwort und Datenbank mit der Person, die den Server betreut.
err-desk-server-failed = Der Server des Eingangs hat versagt, daher ist dies vielleicht nicht gespeichert.
rec-desk-server-failed = Scannen Sie noch einmal: Nichts wird doppelt gespeichert. Bleibt es so, sagen Sie es der Person, die den Server betreut.
err-desk-place-address = An diese Adresse kann nicht gesendet werden.
rec-desk-place-address = Schreiben Sie sie als „https://host/path“ oder, für MLLP, als „host:port“. Ein Kennwort gehört nicht hinein: Nehmen Sie „--token DATEI“.
err-desk-place-needs-tls = Diese Adresse ist unverschlüsselt, daher wurde nichts gesendet.
rec-desk-place-needs-tls = Nehmen Sie „https://“. Nur wenn das Netz selbst geschützt ist, fügen Sie „--without-tls“ hinzu.
err-desk-no-certificate = In der Zertifikatsdatei steht keines.
rec-desk-no-certificate = Nennen Sie eine Datei in der Form PEM; in ihr steht „BEGIN CERTIFICATE“.
err-desk-not-given-up = Bericht { $number } wurde nicht aufgegeben.
rec-desk-not-given-up = Was wartet, zeigt „feedside-desk queue“.
# $line die Nummer einer Zeile der Datei.
err-desk-codes-header = Die Datei der Codes beginnt nicht wie eine solche.
rec-desk-codes-header = Ihre erste Zeile muss „ours,display,system,code,system_display“ sein.
err-desk-codes-line = Zeile { $line } der Datei der Codes ist kein Code.
rec-desk-codes-line = Sie braucht fünf Zellen: unseren Code, seinen Namen und entweder System, Code und Namen dort oder drei leere. Eine Zelle mit Komma steht in Anführungszeichen.
err-desk-codes-not-ours = Zeile { $line } der Datei der Codes gilt etwas, das in keinem Bericht steht.
rec-desk-codes-not-ours = Vergleichen Sie ihre erste Zelle mit den Codes einer Ausgabe: Es muss einer von unseren sein.
err-desk-codes-twice = Zeile { $line } der Datei der Codes sagt noch einmal oder anders, was schon eine frühere sagt.
rec-desk-codes-twice = Nehmen Sie eine der beiden Zeilen heraus, oder geben Sie beiden denselben Namen.
err-desk-codes-too-long = Die Datei der Codes ist zu lang.
rec-desk-codes-too-long = Prüfen Sie, ob es die richtige Datei ist: Höchstens ein Megabyte wird gelesen.
err-desk-not-laid-out = Der Bericht ließ sich in dieser Form nicht aufsetzen.
rec-desk-not-laid-out = Versuchen Sie eine andere Form und sagen Sie es, wer diesen Computer betreut.

## Die Sperre der Daten.

err-vault-wrong = Damit öffnet es sich nicht.
rec-vault-wrong = Sehen Sie die Ziffern an und tippen Sie sie noch einmal.
err-vault-wait = Es ist zu früh für den nächsten Versuch.
rec-vault-wait = Warten Sie so lange, wie der Bildschirm sagt.
err-vault-device-gone = Diese Daten stammen von einem anderen Gerät, oder das Geheimnis dieses Geräts ist verloren, sodass keine PIN sie öffnet.
rec-vault-device-gone = Tippen Sie den Notfallcode ein, der beim Festlegen der PIN aufgeschrieben wurde.
err-vault-keys-gone = Die Daten hier sind verschlüsselt, und die Datei mit ihren Schlüsseln fehlt.
rec-vault-keys-gone = Nichts wurde verändert. Bitten Sie, wer dieses Gerät betreut, „feedside.keys“ aus einer Kopie zurückzulegen.
err-vault-keys-damaged = Die Datei mit den Schlüsseln der Daten ist nicht lesbar.
rec-vault-keys-damaged = Nichts wurde verändert. Bitten Sie, wer dieses Gerät betreut, den ganzen Ordner aufzuheben.
err-vault-full = Auf diesem Gerät ist kein Platz mehr.
rec-vault-full = Alles ist, wie es war. Schaffen Sie Platz auf dem Gerät und versuchen Sie es noch einmal.
err-vault-no-random = Das Gerät gab keine Zufallszahlen, sodass kein Schlüssel entstehen konnte.
rec-vault-no-random = Alles ist, wie es war. Starten Sie das Gerät neu und versuchen Sie es noch einmal.
