import type { Template } from './translate.ts';

/** Notes, reasons and assumptions of results in German. Longer beginnings stand before shorter ones. */
export const GERMAN_NOTES: readonly Template[] = [
  ['distribution: normal strength', 'Verteilung: normale Festigkeit'],
  ['distribution: Weibull life', 'Verteilung: Weibull-Lebensdauer'],
  [
    'confidence: 95 %, two-sided intervals and one-sided bounds',
    'Vertrauen: 95 %, zweiseitige Bereiche und einseitige Schranken',
  ],
  ['energy: potential, m·g·h', 'Energie: potentiell, m·g·h'],
  [
    "gravity: the rig's where it is known, else standard gravity, 9.80665 m/s²",
    'Fallbeschleunigung: die des Prüfstands, wo sie bekannt ist, sonst die Normfallbeschleunigung, 9,80665 m/s²',
  ],
  [
    'the uncertainty of the rig is not carried: its budget is one of m·g·h at one mass, and energies are kinetic',
    'die Unsicherheit des Prüfstands wird nicht mitgeführt: ihre Bilanz ist die von m·g·h bei einer Masse, und die Energien sind kinetisch',
  ],
  [
    'the uncertainty of the rig is not carried: its budget is one of m·g·h at one mass, and the falling mass differs between drops',
    'die Unsicherheit des Prüfstands wird nicht mitgeführt: ihre Bilanz ist die von m·g·h bei einer Masse, und die fallende Masse ist nicht in allen Schlägen gleich',
  ],
  [
    'the uncertainty of the pressure is left out: the protocol sets no pressure',
    'die Unsicherheit des Drucks ist ausgelassen: der Prüfplan setzt keinen Druck',
  ],
  [
    'drawing the inputs gives another interval than the law of propagation: state the drawn one',
    'das Ziehen der Eingangsgrößen gibt einen anderen Bereich als die Fortpflanzung: anzugeben ist der gezogene',
  ],
  ['sites: one hit a specimen', 'Stellen: ein Schlag je Reifen'],
  ['sites: a new spot for every hit', 'Stellen: eine neue Stelle für jeden Schlag'],
  [
    'stop: no stop rule; the operator ends the series',
    'Stopp: keine Stoppregel; der Bediener beendet die Reihe',
  ],
  ['decision: lower-bound at 95 %', 'Entscheidung: untere Schranke zu 95 %'],
  [
    '{} invalidates the whole run: no estimate can be trusted',
    '{1} macht die ganze Prüfung ungültig: auf keinen Schätzwert ist Verlass',
  ],
  [
    '{} invalidates the comparison: each sample stands by itself, and no verdict may be given on them together',
    '{1} macht den Vergleich ungültig: jede Stichprobe steht für sich, und zusammen darf kein Urteil über sie gegeben werden',
  ],
  ['{} waits to be settled: every number is provisional', '{1} wartet auf Klärung: jede Zahl ist vorläufig'],
  [
    '{} of {} are left out, more than a fifth: no estimate can be trusted',
    '{1} von {2~} sind ausgelassen, mehr als ein Fünftel: auf keinen Schätzwert ist Verlass',
  ],
  [
    '{} of {} are left out, more than a third: no estimate can be trusted',
    '{1} von {2~} sind ausgelassen, mehr als ein Drittel: auf keinen Schätzwert ist Verlass',
  ],
  [
    'the protocol has no stop rule: how many drops the test should have is not checked',
    'der Prüfplan hat keine Stoppregel: wie viele Schläge die Prüfung haben soll, ist nicht geprüft',
  ],
  [
    'the {} is not recorded for any drop: it is not shown to have been kept',
    '{1} ist für keinen Schlag aufgezeichnet: dass die Bedingung eingehalten wurde, ist nicht gezeigt',
  ],
  [
    'the {} is not recorded for {} of {}: it is not shown to have been kept',
    '{1} ist für {2} von {3~} nicht aufgezeichnet: dass die Bedingung eingehalten wurde, ist nicht gezeigt',
  ],
  [
    'the leak check that the protocol asks for is not noted for any survival: that the tyres were tight is not shown',
    'die Dichtprüfung, die der Prüfplan verlangt, ist für keinen überstandenen Schlag notiert: dass die Reifen dicht waren, ist nicht gezeigt',
  ],
  [
    'the leak check that the protocol asks for is not noted for {} of {}: that the tyres were tight is not shown',
    'die Dichtprüfung, die der Prüfplan verlangt, ist für {1} von {2~} nicht notiert: dass die Reifen dicht waren, ist nicht gezeigt',
  ],
  [
    'the pressure is planned by tyre size, and the size of the specimens of {} is not known or not planned for: their pressure was not checked',
    'der Druck ist nach Reifengröße geplant, und die Größe der Reifen von {1~} ist nicht bekannt oder nicht geplant: ihr Druck wurde nicht geprüft',
  ],
  [
    '{} on reference or spare tyres is set aside: no part of any series or estimate',
    '{1} auf Vergleichs- oder Ersatzreifen ist zur Seite gelegt: kein Teil einer Reihe oder eines Schätzwerts',
  ],
  [
    '{} on reference or spare tyres are set aside: no part of any series or estimate',
    '{1} auf Vergleichs- oder Ersatzreifen sind zur Seite gelegt: kein Teil einer Reihe oder eines Schätzwerts',
  ],
  [
    '{} ended below the highest level without failing: known only to be stronger than the last height survived',
    '{1} endeten unter der höchsten Stufe ohne Ausfall: nur als stärker bekannt als die letzte überstandene Höhe',
  ],
  [
    '{} survived with a damage that is a failure elsewhere (line {}): look again',
    '{1} überstanden mit einem Schaden, der anderswo ein Ausfall ist (Zeile {2}): noch einmal ansehen',
  ],
  [
    "damages that are none of the vocabulary, and taken as the tyre's where it failed: {}",
    'Schäden außerhalb des Wortschatzes, als die des Reifens genommen, wo er versagte: {1}',
  ],
  [
    "{}: a spreadsheet's hint for the separator stands before the export: passed over",
    '{1}: ein Hinweis der Tabellenkalkulation auf das Trennzeichen steht vor dem Export: übergangen',
  ],
  [
    'the life of the tyre is an interval: from its kilometres at the set condition to every kilometre that it ran',
    'die Lebensdauer des Reifens ist ein Bereich: von seinen Kilometern unter der Bedingung bis zu jedem, den er lief',
  ],
  [
    'several tyres and one ledger: the distances of the outcomes are taken as written, the ledger is not taken from them',
    'mehrere Reifen und ein Streckenbuch: die Strecken der Ergebnisse gelten wie geschrieben, das Streckenbuch wird nicht von ihnen abgezogen',
  ],
  [
    'no log of the drum was given: the distances of the outcomes are taken as run at the set condition',
    'keine Messdatei der Trommel angegeben: die Strecken der Ergebnisse gelten als unter der Bedingung gelaufen',
  ],
  [
    '{} written twice in a row: counted once, the last in line {}',
    '{1} zweimal hintereinander geschrieben: einmal gezählt, die letzte in Zeile {2}',
  ],
  [
    'several tyres on one drum: the life of each is an interval by its own ledger; schedule and distance are those of the first',
    'mehrere Reifen auf einer Trommel: die Lebensdauer jedes ist ein Bereich nach seinem eigenen Streckenbuch; Ablauf und Strecke sind die des ersten',
  ],
  ['no log of the drum was given', 'keine Messdatei der Trommel angegeben'],
  [
    'the schedule limits the {}, and the log has no column for it: not checked',
    'der Ablauf begrenzt {1}, und die Messdatei hat keine Spalte dafür: nicht geprüft',
  ],
  [
    'events that are no departure from the protocol: {}',
    'Ereignisse, die keine Abweichung vom Prüfplan sind: {1}',
  ],
  ['the log has a column that is not known: {}', 'die Messdatei hat eine Spalte, die nicht bekannt ist: {1}'],
  ['the same as {}, byte for byte: read once', 'Byte für Byte gleich {1}: einmal gelesen'],
  [
    'bound to its protocol: hits from {} mm in steps of {} on one tyre, each tyre taken to have one fixed strength',
    'an seinen Prüfplan gebunden: Schläge ab {1} mm in Stufen von {2} auf einen Reifen, jeder Reifen mit einer festen Festigkeit angenommen',
  ],
  [
    '{} drops on {} specimens are repeat looks at them: the calibrated interval takes {} % of the variance to lie between tyres, which so few cannot show',
    '{1} Schläge auf {2} Reifen sind wiederholte Blicke auf sie: der kalibrierte Bereich nimmt {3} % der Varianz zwischen Reifen an, was so wenige nicht zeigen können',
  ],
  [
    '{} drops on {} specimens are repeat looks at them, taken as independent here: the interval is too narrow (of nominal 95 % intervals some 75 to 88 % hold where half or more of the variance lies between tyres)',
    '{1} Schläge auf {2} Reifen sind wiederholte Blicke auf sie, hier als unabhängig genommen: der Bereich ist zu schmal (von nominellen 95-%-Bereichen treffen etwa 75 bis 88 %, wo die halbe Varianz oder mehr zwischen Reifen liegt)',
  ],
  ['the interval is not calibrated, since {}', 'der Bereich ist nicht kalibriert: {1}'],
  [
    'the interval is calibrated as if the path had been kept',
    'der Bereich ist kalibriert, als wäre der Pfad eingehalten worden',
  ],
  ['profile intervals alone were asked for', 'nur Profil-Bereiche waren verlangt'],
  ['there is no simulation of {} yet', 'für {1} gibt es noch keine Simulation'],
  [
    'the drops were made with several masses, or by speed, so that no height stands for an energy',
    'die Schläge wurden mit mehreren Massen oder nach Geschwindigkeit gemacht, so dass keine Höhe für eine Energie steht',
  ],
  ['the drops were made with several masses', 'die Schläge wurden mit mehreren Massen gemacht'],
  [
    'the drops were not all made with one falling mass and by height',
    'die Schläge wurden nicht alle mit einer Fallmasse und nach Höhe gemacht',
  ],
  ['the drops belong to several series', 'die Schläge gehören zu mehreren Reihen'],
  [
    'the energy of a drop does not follow from its level',
    'die Energie eines Schlags folgt nicht aus seiner Stufe',
  ],
  ['no drop stands on a level', 'kein Schlag steht auf einer Stufe'],
  ['its levels are no rising energies', 'seine Stufen sind keine steigenden Energien'],
  ['it has one level only', 'er hat nur eine Stufe'],
  ['the count formula does not apply: {}', 'die Zählformel gilt nicht: {1}'],
  ['it does not apply: {}', 'sie gilt nicht: {1}'],
  [
    'it is for one step down after a failure, one up after a survival',
    'sie ist für eine Stufe hinab nach einem Ausfall, eine hinauf nach einem Überstehen',
  ],
  [
    'it holds for normal and lognormal strength, not for {}',
    'sie gilt für normale und lognormale Festigkeit, nicht für {1}',
  ],
  [
    'for {} strength its levels must be equally spaced by {}',
    'bei {1} Festigkeit müssen die Stufen gleich weit liegen in {2}',
  ],
  [
    'all drops had one outcome, so there is none to count',
    'alle Schläge hatten dasselbe Ergebnis, so gibt es keines zu zählen',
  ],
  [
    'the count cannot tell a spread as small as this beside the step (M at most 0.3): 0.53 of the step is put in its place, as fatigue standards do',
    'die Zählung kann eine so kleine Streuung neben der Stufe nicht bestimmen (M höchstens 0,3): 0,53 der Stufe steht an ihrer Stelle, wie es Normen der Ermüdung tun',
  ],
  [
    'the count cannot tell a spread as small as this beside the step (M at most 0.3)',
    'die Zählung kann eine so kleine Streuung neben der Stufe nicht bestimmen (M höchstens 0,3)',
  ],
  ['the path was not kept: {}', 'der Pfad wurde nicht eingehalten: {1}'],
  [
    'the {} of line {} was not the planned one (DROP-01)',
    '{1} von Zeile {2} war nicht die geplante (DROP-01)',
  ],
  [
    'the interval is unbounded on both sides: these drops do not exclude that the chance of failure is the same at every {}, or a strength so far off that no limit can be named',
    'der Bereich ist nach beiden Seiten offen: diese Schläge schließen nicht aus, dass die Ausfallwahrscheinlichkeit überall gleich ist, oder eine so ferne Festigkeit, dass sich keine Grenze nennen lässt',
  ],
  [
    'the interval is unbounded on both sides: these drops do not exclude that the chance of failure is the same at every {}',
    'der Bereich ist nach beiden Seiten offen: diese Schläge schließen nicht aus, dass die Ausfallwahrscheinlichkeit überall gleich ist',
  ],
  [
    'the interval is unbounded upwards: these drops do not exclude that the chance of failure is the same at every {}, or a strength so far off that no limit can be named',
    'der Bereich ist nach oben offen: diese Schläge schließen nicht aus, dass die Ausfallwahrscheinlichkeit überall gleich ist, oder eine so ferne Festigkeit, dass sich keine Grenze nennen lässt',
  ],
  [
    'the interval is unbounded upwards: these drops do not exclude that the chance of failure is the same at every {}',
    'der Bereich ist nach oben offen: diese Schläge schließen nicht aus, dass die Ausfallwahrscheinlichkeit überall gleich ist',
  ],
  [
    'the interval is unbounded downwards: these drops do not exclude that the chance of failure is the same at every {}, or a strength so far off that no limit can be named',
    'der Bereich ist nach unten offen: diese Schläge schließen nicht aus, dass die Ausfallwahrscheinlichkeit überall gleich ist, oder eine so ferne Festigkeit, dass sich keine Grenze nennen lässt',
  ],
  [
    'the interval is unbounded downwards: these drops do not exclude that the chance of failure is the same at every {}',
    'der Bereich ist nach unten offen: diese Schläge schließen nicht aus, dass die Ausfallwahrscheinlichkeit überall gleich ist',
  ],
  [
    'the interval is unbounded {}: these lives do not exclude any value there',
    'der Bereich ist {1} offen: diese Lebensdauern schließen dort keinen Wert aus',
  ],
  [
    'no drop counts, so there is nothing to estimate from',
    'kein Schlag zählt, so gibt es nichts, woraus zu schätzen wäre',
  ],
  [
    'no failure up to {}: only a lower bound; drop higher',
    'kein Ausfall bis {1}: nur eine untere Schranke; höher schlagen',
  ],
  [
    'all failed, down to {}: only an upper bound; drop lower',
    'alle versagten, hinab bis {1}: nur eine obere Schranke; tiefer schlagen',
  ],
  [
    'single level: {} of {} failed at {}, the only level; drop at others too',
    'eine Stufe: {1} von {2} versagten bei {3}, der einzigen Stufe; auch auf anderen schlagen',
  ],
  [
    'common level: failures and survivals meet at {} only ({} of {} failed there), so the spread has no best value; more drops near it help',
    'gemeinsame Stufe: Ausfälle und Überstandene treffen sich nur bei {1} ({2} von {3} versagten dort), so hat die Streuung keinen besten Wert; mehr Schläge in der Nähe helfen',
  ],
  [
    'gap: every survival (up to {}) lies below every failure (from {}), so any median between fits; drop between them, or take a smaller step',
    'Lücke: jedes Überstehen (bis {1}) liegt unter jedem Ausfall (ab {2}), so passt jeder Median dazwischen; dazwischen schlagen oder eine kleinere Stufe nehmen',
  ],
  [
    'single value: all strengths were read as {}, so there is no spread to estimate',
    'ein Wert: alle Festigkeiten wurden als {1} gelesen, so gibt es keine Streuung zu schätzen',
  ],
  [
    'wrong direction: failures lie on average no higher ({}) than survivals ({}), so no spread fits; look for a mix-up of outcomes or tyres',
    'falsche Richtung: Ausfälle liegen im Mittel nicht höher ({1}) als Überstandene ({2}), so passt keine Streuung; nach vertauschten Ergebnissen oder Reifen suchen',
  ],
  [
    'the mean of noted heights does not exist: {} of {} specimens did not fail',
    'das Mittel der notierten Höhen gibt es nicht: {1} von {2} Reifen versagten nicht',
  ],
  [
    'for comparison with old reports only: it lies high by half a step where a tyre has one fixed strength, and its bias moves with start and step where hits scatter or damage adds up',
    'nur zum Vergleich mit alten Berichten: es liegt um eine halbe Stufe hoch, wo ein Reifen eine feste Festigkeit hat, und seine Verzerrung wandert mit Anfang und Stufe, wo Schläge streuen oder Schaden sich summiert',
  ],
  [
    'one hit on a tyre that was not hit before; {}; the data cannot tell the spread between specimens from that from hit to hit: the median is {} if all of it lies between specimens and {} if all of it lies from hit to hit; several series or sites on each specimen would settle it; {}',
    'ein Schlag auf einen noch nicht geschlagenen Reifen; {1}; die Daten können die Streuung zwischen Reifen nicht von der von Schlag zu Schlag trennen: der Median ist {2}, wenn alle zwischen Reifen liegt, und {3}, wenn alle von Schlag zu Schlag liegt; mehrere Reihen oder Stellen je Reifen würden es klären; {4}',
  ],
  [
    'in simulated rising-height tests of 6, 8 and 12 tyres its bias was {} to {} of the spread, by how that parts, and its interval held in {} to {} %',
    'in simulierten Prüfungen mit steigender Höhe an 6, 8 und 12 Reifen war seine Verzerrung {1} bis {2} der Streuung, je nachdem, wie diese sich teilt, und sein Intervall hielt in {3} bis {4} %',
  ],
  [
    'one hit on a tyre that was not hit before; {}; the data cannot tell the spread between specimens from that from hit to hit: the median is {} if all of it lies between specimens and {} if all of it lies from hit to hit; several series or sites on each specimen would settle it',
    'ein Schlag auf einen noch nicht geschlagenen Reifen; {1}; die Daten können die Streuung zwischen Reifen nicht von der von Schlag zu Schlag trennen: der Median ist {2}, wenn alle zwischen Reifen liegt, und {3}, wenn alle von Schlag zu Schlag liegt; mehrere Reihen oder Stellen je Reifen würden es klären',
  ],
  [
    'one hit on a tyre that was not hit before; {}',
    'ein Schlag auf einen noch nicht geschlagenen Reifen; {1}',
  ],
  ['no damage per hit is assumed (damagePerHit)', 'kein Schaden je Schlag angenommen (damagePerHit)'],
  [
    'each hit is taken to cost a tyre {} of its strength, as stated',
    'jeder Schlag kostet einen Reifen {1} seiner Festigkeit, wie angegeben',
  ],
  ['at the most likely parting of the spreads', 'bei der wahrscheinlichsten Teilung der Streuungen'],
  [
    'the data cannot tell it from the other spread',
    'die Daten können sie nicht von der anderen Streuung trennen',
  ],
  [
    '{} of the variance lies between tyres ({} interval {} to {})',
    '{1} der Varianz liegt zwischen Reifen ({2}-Bereich {3} bis {4})',
  ],
  ['no specimen effect can be fitted: {}', 'es lässt sich kein Reifeneffekt anpassen: {1}'],
  [
    'the specimen effect is fitted for normal and lognormal strength, not for {}',
    'der Reifeneffekt wird für normale und lognormale Festigkeit angepasst, nicht für {1}',
  ],
  [
    'trimmed by {} % at each end, as the curve does not run from 0 to 1',
    'um {1} % an jedem Ende gestutzt, da die Kurve nicht von 0 bis 1 läuft',
  ],
  [
    'the share failed that the rule aims at: 1 − 2^(−1/k) for k survivals in a row',
    'der Ausfallanteil, auf den die Regel zielt: 1 − 2^(−1/k) bei k überstandenen in Folge',
  ],
  [
    'the interval assumes no law and ends at levels that were tested; so few drops leave it open',
    'der Bereich nimmt keine Verteilung an und endet auf geprüften Stufen; so wenige Schläge lassen ihn offen',
  ],
  [
    'made for fixed levels: where the outcomes steer the levels, its error is too small',
    'für feste Stufen gemacht: wo die Ergebnisse die Stufen lenken, ist sein Fehler zu klein',
  ],
  [
    'it takes drops as single looks, and a rise is one look over several levels; ask for nonparametric',
    'es nimmt Schläge als einzelne Blicke, und ein Anstieg ist ein Blick über mehrere Stufen; nonparametric verlangen',
  ],
  [
    'the data place the median from {} to {} and do not say where between; the middle is printed, and no interval',
    'die Daten legen den Median von {1} bis {2} und sagen nicht, wo dazwischen; gedruckt ist die Mitte, ohne Bereich',
  ],
  [
    'no standard error of its own: it scatters like the mean by count; levels passed before the first change of outcome are in it and draw it towards the start',
    'kein eigener Standardfehler: es streut wie das Mittel nach Auszählung; Stufen vor dem ersten Wechsel des Ergebnisses sind enthalten und ziehen es zum Anfang',
  ],
  ['both a failure and a survival are needed', 'es braucht einen Ausfall und ein Überstehen'],
  [
    'the spread is taken to be the step: its error is that of the median only if this is about right',
    'die Streuung ist gleich der Stufe genommen: sein Fehler ist der des Medians nur, wenn das etwa stimmt',
  ],
  [
    'the spread by count times n/(n − 3) = {}: mends most of its bias where the step is about one spread, not at half a spread',
    'die Streuung nach Auszählung mal n/(n − 3) = {1}: hebt den größten Teil der Verzerrung, wo die Stufe etwa eine Streuung ist, nicht bei einer halben',
  ],
  [
    'such limits hold less often than they say, as was measured for 95 %: the spread of an up-and-down test is known far less well than n − 1 degrees of freedom say',
    'solche Grenzen treffen seltener, als sie sagen, wie für 95 % gemessen: die Streuung eines Treppenversuchs ist weit schlechter bekannt, als n − 1 Freiheitsgrade sagen',
  ],
  ['the factor n/(n − 3) needs more than 3 drops', 'der Faktor n/(n − 3) braucht mehr als 3 Schläge'],
  ['no regression to adjust by: {}', 'keine Regression zum Umrechnen: {1}'],
  [
    'at {}; beside the unadjusted estimate, which stays the headline',
    'bei {1}; neben dem nicht umgerechneten Schätzwert, der vorn bleibt',
  ],
  ['{}: differences from {}', '{1}: Unterschiede gegen {2}'],
  ['{}: effect per {}, mean {}', '{1}: Einfluss je {2}, Mittel {3}'],
  ['each rise stands with the mean of its hits', 'jeder Anstieg steht mit dem Mittel seiner Schläge'],
  [
    'the log has no {} for {} of {} observations; record it, or leave {} out',
    'die Messdatei hat {1} für {2} von {3} Beobachtungen nicht; aufzeichnen oder {4} weglassen',
  ],
  [
    'a law is chosen beforehand, not by fit: in simulated up-and-down tests of {} drops the true one of four laws fitted best in {} (normal), {} (lognormal), {} (logistic) and {} (Weibull) of tests, and its mean Akaike weight was {} to {}, where guessing gives 0.25',
    'eine Verteilung wird vorher gewählt, nicht nach Anpassung: in simulierten Treppenversuchen von {1} Schlägen passte die wahre von vieren am besten in {2} (normal), {3} (lognormal), {4} (logistisch) und {5} (Weibull) der Prüfungen, und ihr mittleres Akaike-Gewicht war {6} bis {7}, wo Raten 0,25 gibt',
  ],
  [
    '{} levels leave nothing to test beside a location and a spread',
    '{1} Stufen lassen neben Lage und Streuung nichts zu prüfen',
  ],
  ['rises are no groups of drops at a level', 'Anstiege sind keine Gruppen von Schlägen auf einer Stufe'],
  ['it has no level at or below nought', 'sie hat keine Stufe bei oder unter null'],
  [
    'one life between {} and {} explains every tyre, so any scatter down to none fits; failures further apart, or looks closer together, would settle it',
    'eine Lebensdauer zwischen {1} und {2} erklärt jeden Reifen, so passt jede Streuung bis hinab zu keiner; weiter getrennte Ausfälle oder engere Besichtigungen würden es klären',
  ],
  [
    'no outcome says anything of a life, so there is nothing to estimate from',
    'kein Ergebnis sagt etwas über eine Lebensdauer, so gibt es nichts, woraus zu schätzen wäre',
  ],
  [
    'no tyre failed, up to {}: only lower bounds; run on',
    'kein Reifen versagte, bis {1}: nur untere Schranken; weiterlaufen',
  ],
  [
    'every tyre failed before it was first looked at, down to {}: only upper bounds; look sooner',
    'jeder Reifen versagte vor der ersten Besichtigung, hinab bis {1}: nur obere Schranken; früher ansehen',
  ],
  [
    'failures and survivals meet at {} only ({} of {} failed there), so the scatter of lives has no best value; look at other distances too',
    'Ausfälle und Überstandene treffen sich nur bei {1} ({2} von {3} versagten dort), so hat die Streuung der Lebensdauern keinen besten Wert; auch bei anderen Strecken ansehen',
  ],
  [
    'all lives were read as {}, so there is no scatter to estimate',
    'alle Lebensdauern wurden als {1} gelesen, so gibt es keine Streuung zu schätzen',
  ],
  [
    'law-free: between {} and {}, the looks do not say where',
    'verteilungsfrei: zwischen {1} und {2}, die Besichtigungen sagen nicht wo',
  ],
  ['law-free, without an interval of its own', 'verteilungsfrei, ohne eigenen Bereich'],
  ['law-free: so large a share did not fail', 'verteilungsfrei: ein so großer Anteil versagte nicht'],
  ['no tyre ran so far: the longest ran {} km', 'kein Reifen lief so weit: der längste lief {1} km'],
  ['none failed by then; without an interval of its own', 'bis dahin versagte keiner; ohne eigenen Bereich'],
  [
    'of one tyre: the interval is that of its line, and says nothing of other tyres',
    'von einem Reifen: der Bereich ist der seiner Geraden und sagt nichts über andere Reifen',
  ],
  ['mean over tyres, with the scatter between them', 'Mittel über Reifen, mit der Streuung zwischen ihnen'],
  [
    '{} times the longest distance read: an extrapolation',
    'das {1}-Fache der längsten gelesenen Strecke: eine Extrapolation',
  ],
  [
    'a line needs cold readings at {} distances or more on one tyre',
    'eine Gerade braucht kalte Ablesungen bei {1} Strecken oder mehr an einem Reifen',
  ],
  [
    'cold readings at {} distances make no line with an interval',
    'kalte Ablesungen bei {1} Strecken geben keine Gerade mit Bereich',
  ],
  [
    'the depth does not fall with distance: no limit is in sight',
    'die Tiefe fällt nicht mit der Strecke: keine Grenze ist in Sicht',
  ],
  [
    'the slope is not told from 0, so the distance to the limit is unbounded',
    'die Steigung ist von 0 nicht unterschieden, so ist die Strecke zur Grenze offen',
  ],
  [
    'the life by which 63.2 % have failed, here of a {} law',
    'die Lebensdauer, bis zu der 63,2 % versagt haben, hier einer {1}',
  ],
  ['a {} law has no Weibull shape', 'eine {1} hat keine Weibull-Form'],
  [
    'there are no outcomes of tyres to estimate from, and {}',
    'es gibt keine Ergebnisse von Reifen zum Schätzen, und {1}',
  ],
  [
    'there are no outcomes of tyres to estimate from, so no {} law can be fitted',
    'es gibt keine Ergebnisse von Reifen zum Schätzen, so lässt sich keine {1} anpassen',
  ],
  ['no tyre failed, so no {} law can be fitted', 'kein Reifen versagte, so lässt sich keine {1} anpassen'],
  ['no tyre failed, and {}', 'kein Reifen versagte, und {1}'],
  [
    'too few ran far enough to show by counting that at most {} % fail',
    'zu wenige liefen weit genug, um durch Zählen zu zeigen, dass höchstens {1} % versagen',
  ],
  ['none ran {} km', 'keiner lief {1} km'],
  [
    'no tyre failed: a lower bound by counting, free of any law',
    'kein Reifen versagte: eine untere Schranke durch Zählen, frei von jeder Verteilung',
  ],
  [
    'no tyre failed: the lower bound of Clopper and Pearson on {} of {} tyres that ran so far',
    'kein Reifen versagte: die untere Schranke von Clopper und Pearson aus {1} von {2} Reifen, die so weit liefen',
  ],
  [
    'from {} failures the shape is hardly known, and on average much too high',
    'aus {1} Ausfällen ist die Form kaum bekannt und im Mittel viel zu hoch',
  ],
  [
    "from {} failures the likelihood's shape is too high by {} % on average or more, since lives were cut short: lives scatter more than it says",
    'aus {1} Ausfällen ist die Form der Likelihood im Mittel um {2} % oder mehr zu hoch, da Lebensdauern abgeschnitten wurden: sie streuen mehr, als sie sagt',
  ],
  [
    "from {} failures the likelihood's shape is too high by {} % on average: lives scatter more than it says",
    'aus {1} Ausfällen ist die Form der Likelihood im Mittel um {2} % zu hoch: Lebensdauern streuen mehr, als sie sagt',
  ],
  [
    'times (n − 2)/(n − 0.68); the interval is that of the likelihood',
    'mal (n − 2)/(n − 0,68); der Bereich ist der der Likelihood',
  ],
  [
    'times (n − 2)/(n − 0.68) of as many complete lives as failed, since lives were cut short an approximation; the interval is that of the likelihood',
    'mal (n − 2)/(n − 0,68) von so vielen vollen Lebensdauern wie versagten, da Lebensdauern abgeschnitten wurden eine Näherung; der Bereich ist der der Likelihood',
  ],
  ['{} differs: {} ({})', '{1} ist verschieden: {2} ({3})'],
  ['{} differs: {}', '{1} ist verschieden: {2}'],
  [
    'goes together with the construction: nothing in the data can tell the two apart',
    'geht mit der Konstruktion zusammen: nichts in den Daten kann die beiden trennen',
  ],
  [
    '{} declared factors differ at once ({}): the effect belongs to no single one',
    '{1} erklärte Faktoren sind zugleich verschieden ({2}): die Wirkung gehört zu keinem einzelnen',
  ],
  [
    'the protocols assume different strength laws; {}, that of the first, is used',
    'die Prüfpläne nehmen verschiedene Verteilungen an; {1}, die des ersten, wird verwendet',
  ],
  [
    '{}: several drops on one tyre count as if on tyres of their own; intervals may be too narrow',
    '{1}: mehrere Schläge auf einen Reifen zählen wie auf eigene Reifen; Bereiche können zu schmal sein',
  ],
  ['the two change places', 'die beiden tauschen die Plätze'],
  ['the two are told apart', 'die beiden sind unterschieden'],
  ['the two are no longer told apart', 'die beiden sind nicht mehr unterschieden'],
  [
    'the law puts this point at or below 0 J: no ratio can be told',
    'die Verteilung legt diesen Punkt auf oder unter 0 J: kein Verhältnis',
  ],
  [
    'different methods ({}): they look at strength in different ways; test by one method',
    'verschiedene Verfahren ({1}): sie sehen die Festigkeit auf verschiedene Weise; nach einem Verfahren prüfen',
  ],
  [
    'rising-height tests under different {}: each earlier hit weakens the tyre, so the height of failure depends on them; test under one protocol',
    'Prüfungen mit steigender Höhe unter verschiedenen {1}: jeder frühere Schlag schwächt den Reifen, so hängt die Ausfallhöhe davon ab; nach einem Prüfplan prüfen',
  ],
  [
    'the uncertainty of the pressure is left out: the protocol sets no pressure',
    'die Unsicherheit des Drucks ist ausgelassen: der Prüfplan setzt keinen Druck',
  ],
  [
    'drawing the inputs gives another interval than the law of propagation: state the drawn one',
    'das Ziehen der Eingangsgrößen gibt einen anderen Bereich als die Fortpflanzung: den gezogenen angeben',
  ],
  [
    '{} of the {} expected numbers of failures and survivals at the {} levels are below 5 ({} below 1): too few drops a level for a test of the law',
    '{1} der {2} erwarteten Zahlen von Ausfällen und Überstandenen auf den {3} Stufen sind unter 5 ({4} unter 1): zu wenige Schläge je Stufe für einen Test der Verteilung',
  ],
  [
    'remarks on {} that count, to be read: {}; a remark leaves nothing out, a reason of the catalogue does (valid, reason)',
    'Bemerkungen zu {1~}, die zählen, sind zu lesen: {2}; eine Bemerkung lässt nichts aus, ein Grund des Katalogs schon (valid, reason)',
  ],
  [
    'remarks on {} that counts, to be read: {}; a remark leaves nothing out, a reason of the catalogue does (valid, reason)',
    'Bemerkungen zu {1~}, der zählt, sind zu lesen: {2}; eine Bemerkung lässt nichts aus, ein Grund des Katalogs schon (valid, reason)',
  ],
  [
    'axle nuts tightened otherwise: {}; most others {} N·m',
    'Achsmuttern anders angezogen: {1}; die meisten anderen {2} N·m',
  ],
  ['axle nuts tightened otherwise: {}; planned {} N·m', 'Achsmuttern anders angezogen: {1}; geplant {2} N·m'],
  ['rig or rim changed within the series', 'Prüfstand oder Felge wechselte in der Reihe'],
  [
    'nominally 95 %, but it held in {} of 100 simulated tests of 30 drops with steps of 0.5, 1 and 1.5 spreads (10 % point): the spread of an up-and-down test is known like one with about {} degrees of freedom, not {}',
    'nominell 95 %, traf aber in {1} von 100 simulierten Prüfungen von 30 Schlägen mit Stufen von 0,5, 1 und 1,5 Streuungen (10-%-Punkt): die Streuung eines Treppenversuchs ist bekannt wie eine mit etwa {2} Freiheitsgraden, nicht {3}',
  ],
];
