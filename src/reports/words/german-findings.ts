import type { Template } from './translate.ts';

/** What was found, in German: the first half of a deviation's message. Longer beginnings stand before shorter ones. */
export const GERMAN_FINDINGS: readonly Template[] = [
  ['height {}, planned {} ± {}', 'Höhe {1}, geplant {2} ± {3}'],
  ['height {}, all drops planned from {} ± {}', 'Höhe {1}, alle Schläge geplant aus {2} ± {3}'],
  ['height {}, the log itself planned {}', 'Höhe {1}, die Messdatei selbst plante {2}'],
  ['mass {}, planned {} ± {}', 'Masse {1}, geplant {2} ± {3}'],
  ['{} states {} kg, the protocol {} kg', '{1} gibt {2} kg an, der Prüfplan {3} kg'],
  ['mass {} in the log, {} kg in the {} (± {})', 'Masse {1} in der Messdatei, {2} kg im {3} (± {4})'],
  ['from here on the step is {}: {}, planned {}', 'von hier an ist die Stufe {1}: {2}, geplant {3}'],
  [
    'raised from {} to {} after line {} {}, planned {}',
    'erhöht von {1} auf {2}, nachdem Zeile {3} {4} war, geplant {5}',
  ],
  [
    'lowered from {} to {} after line {} {}, planned {}',
    'gesenkt von {1} auf {2}, nachdem Zeile {3} {4} war, geplant {5}',
  ],
  ['stayed at {} after line {} {}, planned {}', 'blieb bei {1}, nachdem Zeile {2} {3} war, geplant {4}'],
  ['raised from {} to {} after line {} {}', 'erhöht von {1} auf {2}, nachdem Zeile {3} {4} war'],
  ['lowered from {} to {} after line {} {}', 'gesenkt von {1} auf {2}, nachdem Zeile {3} {4} war'],
  ['stayed at {} after line {} {}', 'blieb bei {1}, nachdem Zeile {2} {3} war'],
  ['the series starts at {}, planned {}', 'die Reihe beginnt bei {1}, geplant {2}'],
  ['series {} has {}', 'Reihe {1} hat {2}'],
  ['series {} ends with {} of {}', 'Reihe {1} endet mit {2} von {3~}'],
  ['series {} ends with {}', 'Reihe {1} endet mit {2}'],
  ['series {} goes on for {} after its stop', 'Reihe {1} läuft nach ihrem Stopp {2} weiter'],
  ['the series has {}', 'die Reihe hat {1}'],
  ['the series ends with {} of {}', 'die Reihe endet mit {1} von {2~}'],
  ['the series ends with {}', 'die Reihe endet mit {1}'],
  ['the series goes on for {} after its stop', 'die Reihe läuft nach ihrem Stopp {1} weiter'],
  ['only one reversal in {}', 'nur eine Umkehrung in {1~}'],
  ['no valid drop', 'keinen gültigen Schlag'],
  ['{}, all of which survived', '{1}, die alle überstanden'],
  ['{}, all of which failed', '{1}, die alle versagten'],
  ['{} starts at {}, planned {}', '{1} beginnt bei {2}, geplant {3}'],
  ['{} failed at its first hit, {}', '{1} versagte beim ersten Schlag, {2}'],
  ['{} survived the highest level, {}', '{1} überstand die höchste Stufe, {2}'],
  ['{} of {} ({} %) failed at the first hit', '{1} von {2~} ({3} %) versagten beim ersten Schlag'],
  [
    'impact at {} m/s, {} % below the {} m/s of a free fall from {}',
    'Aufprall mit {1} m/s, {2} % unter den {3} m/s eines freien Falls aus {4}',
  ],
  [
    'impact at {} m/s, {} % above the {} m/s of a free fall from {}',
    'Aufprall mit {1} m/s, {2} % über den {3} m/s eines freien Falls aus {4}',
  ],
  [
    'no velocity in a series whose energy is ½·m·v²',
    'keine Geschwindigkeit in einer Reihe, deren Energie ½·m·v² ist',
  ],
  [
    'no velocity for {} of {} of a log that has it',
    'keine Geschwindigkeit bei {1} von {2~} einer Messdatei, die sie hat',
  ],
  [
    'speed drifts by {} % of free fall over {}, from line {}',
    'die Geschwindigkeit wandert um {1} % des freien Falls über {2}, ab Zeile {3}',
  ],
  ['{} hits counted, expected one', '{1} Schläge gezählt, erwartet einer'],
  ['the catcher touched the mass before its impact', 'der Fänger berührte die Masse vor ihrem Aufprall'],
  [
    'the catcher missed the mass, which hit again',
    'der Fänger verfehlte die Masse, die noch einmal aufschlug',
  ],
  [
    '{} is {} mm across, the tyre before {} mm, and the height was not set to nought between them',
    '{1} misst {2} mm, der Reifen davor {3} mm, und die Höhe wurde dazwischen nicht genullt',
  ],
  ['made on {}, the series began on {}', 'gemacht auf {1}, die Reihe begann auf {2}'],
  [
    'base or bolts found loose at {} (line {} of the checks)',
    'Fuß oder Schrauben lose gefunden um {1} (Zeile {2} der Prüfungen)',
  ],
  ['pressure {} bar, planned {} bar ± {} bar', 'Druck {1} bar, geplant {2} bar ± {3} bar'],
  ['temperature {} °C, planned {} °C ± {} K', 'Temperatur {1} °C, geplant {2} °C ± {3} K'],
  [
    'pressure of {} fell from hit to hit, from {} to {} bar',
    'Druck von {1} fiel von Schlag zu Schlag, von {2} auf {3} bar',
  ],
  [
    'pressure set at {} °C, hit at {} °C, more than {} K apart',
    'Druck eingestellt bei {1} °C, geschlagen bei {2} °C, mehr als {3} K auseinander',
  ],
  ['pressure read by gauge {}, at first by {}', 'Druck gelesen mit Messer {1}, anfangs mit {2}'],
  [
    'calibration of gauge {} was due before this drop',
    'die Kalibrierung von Messer {1} war vor diesem Schlag fällig',
  ],
  [
    'the check of {} was made at {}, after the first drop',
    'die Prüfung vom {1} wurde um {2} gemacht, nach dem ersten Schlag',
  ],
  ['no rig check on {} before the first drop', 'keine Prüfung des Prüfstands am {1} vor dem ersten Schlag'],
  [
    'the rig check of {} (line {}) failed',
    'die Prüfung des Prüfstands vom {1} (Zeile {2}) wurde nicht bestanden',
  ],
  [
    'the reference of {} read {}, limits {} (line {} of the checks)',
    'der Vergleich vom {1} las {2}, Grenzen {3} (Zeile {4} der Prüfungen)',
  ],
  ['the reference of {} {} (line {} of the checks)', 'der Vergleich vom {1} {2} (Zeile {3} der Prüfungen)'],
  [
    'the velocity check of {} read {}, limits {} (line {} of the checks)',
    'die Prüfung der Geschwindigkeit vom {1} las {2}, Grenzen {3} (Zeile {4} der Prüfungen)',
  ],
  [
    'the velocity check of {} {} (line {} of the checks)',
    'die Prüfung der Geschwindigkeit vom {1} {2} (Zeile {3} der Prüfungen)',
  ],
  [
    'the check of the height scale of {} read {}, limits {} (line {} of the checks)',
    'die Prüfung der Höhenskala vom {1} las {2}, Grenzen {3} (Zeile {4} der Prüfungen)',
  ],
  [
    'the check of the height scale of {} {} (line {} of the checks)',
    'die Prüfung der Höhenskala vom {1} {2} (Zeile {3} der Prüfungen)',
  ],
  [
    'the check of the falling mass of {} read {}, limits {} (line {} of the checks)',
    'die Prüfung der fallenden Masse vom {1} las {2}, Grenzen {3} (Zeile {4} der Prüfungen)',
  ],
  [
    'the check of the falling mass of {} {} (line {} of the checks)',
    'die Prüfung der fallenden Masse vom {1} {2} (Zeile {3} der Prüfungen)',
  ],
  ['{}, settled: {}', '{1}, geklärt: {2}'],
  ['{} (DROP-29)', '{1} (DROP-29)'],
  ['{} (DROP-30)', '{1} (DROP-30)'],
  ['{} conditioned for {} h, expected at least {} h', '{1} konditioniert {2} h, erwartet mindestens {3} h'],
  [
    '{} hit at most {} h after its cure, expected at least {} h',
    '{1} geschlagen höchstens {2} h nach der Vulkanisation, erwartet mindestens {3} h',
  ],
  ['{} was used before ({}, register line {})', '{1} wurde schon benutzt ({2}, Zeile {3} der Reifenliste)'],
  [
    'tyres of {} were cured {} weeks after those of {}, expected at most {}',
    'Reifen von {1} wurden {2} Wochen nach denen von {3} vulkanisiert, erwartet höchstens {4}',
  ],
  [
    '{} hit at {}°, {}° from the hit of line {}, planned at least {}°',
    '{1} geschlagen bei {2}°, {3}° vom Schlag der Zeile {4}, geplant mindestens {5}°',
  ],
  ['{} hit at {}°, {}° from the hit of line {}', '{1} geschlagen bei {2}°, {3}° vom Schlag der Zeile {4}'],
  ['{} hit at {}°, in the avoided stretch {}', '{1} geschlagen bei {2}°, im gemiedenen Bereich {3}'],
  ['hit {} on {}, planned at most {} a specimen', 'Schlag {1} auf {2}, geplant höchstens {3} je Reifen'],
  ['site {} on {}, planned at most {} a specimen', 'Stelle {1} auf {2}, geplant höchstens {3} je Reifen'],
  ['{} had failed on line {}', '{1} hatte in Zeile {2} versagt'],
  [
    '{} failed on line {}, was given tube {} and hit again',
    '{1} versagte in Zeile {2}, bekam Schlauch {3} und wurde wieder geschlagen',
  ],
  ['{} on rim {}, until then on {}', '{1} auf Felge {2}, bis dahin auf {3}'],
  [
    'hit on {}, which the drop of line {} had damaged',
    'geschlagen auf {1}, die der Schlag der Zeile {2} beschädigt hatte',
  ],
  ['{} on a rim of {}, planned {}', '{1} auf einer Felge {2}, geplant {3}'],
  ['{} on a rim of {}, most of the others {}', '{1} auf einer Felge {2}, die meisten anderen {3}'],
  ['{} with a tube of batch {}, planned {}', '{1} mit Schlauch der Charge {2}, geplant {3}'],
  [
    '{} with a tube of batch {}, most of the others {}',
    '{1} mit Schlauch der Charge {2}, die meisten anderen {3}',
  ],
  ['{} with a tube of {}, planned {}', '{1} mit Schlauch aus {2}, geplant {3}'],
  ['{} with a tube of {}, most of the others {}', '{1} mit Schlauch aus {2}, die meisten anderen {3}'],
  ['{} with {} ml of sealant, planned {} ml', '{1} mit {2} ml Dichtmittel, geplant {3} ml'],
  [
    '{} with {} ml of sealant, most of the others {} ml',
    '{1} mit {2} ml Dichtmittel, die meisten anderen {3} ml',
  ],
  ['{} with insert {}, planned {}', '{1} mit Einlage {2}, geplant {3}'],
  ['{} with insert {}, most of the others {}', '{1} mit Einlage {2}, die meisten anderen {3}'],
  ['failed by {}, and nothing of the tyre gave way', 'versagt durch {1}, und nichts am Reifen gab nach'],
  ['failed by {}, and the protocol counts {}', 'versagt durch {1}, und der Prüfplan zählt {2}'],
  ['{} in the log, {} since', '{1} in der Messdatei, {2} seither'],
  ['{} for {}, expected failed or survived', '{1} für {2}, erwartet versagt oder überstanden'],
  [
    'the log calls this drop invalid without a reason, expected a code of the catalogue such as DROP-16',
    'die Messdatei nennt diesen Schlag ungültig ohne Grund, erwartet ein Code des Katalogs wie DROP-16',
  ],
  [
    'the log calls this drop invalid for {} ({}), which is no ground for leaving out a drop',
    'die Messdatei nennt diesen Schlag ungültig wegen {1}, was kein Grund ist, einen Schlag auszulassen',
  ],
  [
    'the log calls this drop invalid for {}, expected a code of the catalogue such as DROP-16',
    'die Messdatei nennt diesen Schlag ungültig wegen {1}, erwartet ein Code des Katalogs wie DROP-16',
  ],
  ['the log calls this drop invalid: {} ({})', 'die Messdatei nennt diesen Schlag ungültig: {1} ({2})'],
  ['read as {}, by a second reader as {}', 'gelesen als {1}, von zweiter Hand als {2}'],
  [
    'read as {}, by the second reader (the first: {}) as {}',
    'gelesen als {1}, von zweiter Hand (erste: {2}) als {3}',
  ],
  [
    'survived, and {} bar before the hit and {} bar after it, expected a loss of at most {} bar',
    'überstanden, und {1} bar vor dem Schlag und {2} bar danach, erwartet ein Verlust von höchstens {3} bar',
  ],
  [
    'failed without a damage, and {} bar before the hit and {} bar after it, expected a loss above {} bar',
    'versagt ohne Schaden, und {1} bar vor dem Schlag und {2} bar danach, erwartet ein Verlust über {3} bar',
  ],
  ['outcome read as {}, at first as {}', 'Ergebnis gelesen als {1}, anfangs als {2}'],
  ['tightness looked at by {}, at first by {}', 'Dichtheit geprüft durch {1}, anfangs durch {2}'],
  ['tightness looked at by {}, planned by {}', 'Dichtheit geprüft durch {1}, geplant durch {2}'],
  [
    'each of {} constructions was tested in one block, the second from here on',
    'jede von {1} Konstruktionen wurde in einem Block geprüft, die zweite von hier an',
  ],
  [
    'each construction had an operator of its own, this one {}',
    'jede Konstruktion hatte einen eigenen Bediener, diese {1}',
  ],
  ['no drop number, expected {}', 'keine Schlagnummer, erwartet {1}'],
  [
    'drop number {} a second time or going back, expected {}',
    'Schlagnummer {1} ein zweites Mal oder rückwärts, erwartet {2}',
  ],
  [
    'drop number {} after a gap of {}, expected {}; the missing drop may have been a failure',
    'Schlagnummer {1} nach einer Lücke von {2~}, erwartet {3}; der fehlende Schlag kann ein Ausfall gewesen sein',
  ],
  [
    'drop number {} after a gap of {}, expected {}; a missing one may have been a failure',
    'Schlagnummer {1} nach einer Lücke von {2~}, erwartet {3}; ein fehlender kann ein Ausfall gewesen sein',
  ],
  [
    'drop number {} after a gap of {}, expected {}; {}',
    'Schlagnummer {1} nach einer Lücke von {2~}, erwartet {3}; {4}',
  ],
  ['drop number {} after a gap, expected {}', 'Schlagnummer {1} nach einer Lücke, erwartet {2}'],
  ['the tyre was hit again, so it had held', 'der Reifen wurde wieder geschlagen, hatte also gehalten'],
  ['the height follows from the drop before it', 'die Höhe folgt aus dem Schlag davor'],
  [
    '{} hit {} after its hit before, expected {} to {}',
    '{1} geschlagen {2} nach dem Schlag davor, erwartet {3} bis {4}',
  ],
  [
    'the last line is cut short ({} of {} cells): left out',
    'die letzte Zeile ist abgeschnitten ({1} von {2} Zellen): ausgelassen',
  ],
  ['{} is not in the table of specimens', '{1} steht nicht in der Reifenliste'],
  ['{} is registered as {}, the run names {}', '{1} ist als {2} eingetragen, die Prüfung nennt {3}'],
  ['all {} tyres have a {} of {}', 'alle {1} Reifen haben {2} {3}'],
  ['made by protocol {}, analysed by {}', 'gemacht nach Prüfplan {1}, ausgewertet nach {2}'],
  [
    'criterion {} rests on version {} of the protocol, the run followed {}',
    'Kriterium {1} ruht auf Version {2} des Prüfplans, die Prüfung folgte {3}',
  ],
  [
    '{} is replaced by {} for {} ({}), approved by {}',
    '{1} ist durch {2} ersetzt wegen {3}, genehmigt von {5}',
  ],
  [
    '{} of {} of {} are none that {} asks for, the first on line {}',
    '{1} von {2~} von {3} sind keine, die {4} verlangt, der erste in Zeile {5}',
  ],
  ['{} of this kind ({}), lines {} to {}', '{1} dieser Art, Zeilen {3} bis {4}'],
  [
    'speed above its limits ({}) in {} (lines {} to {}), {}',
    'Geschwindigkeit über ihren Grenzen ({1}) in {2} (Zeilen {3} bis {4}), {5}',
  ],
  [
    'speed below its limits ({}) in {} (lines {} to {}), {}',
    'Geschwindigkeit unter ihren Grenzen ({1}) in {2} (Zeilen {3} bis {4}), {5}',
  ],
  [
    'load above its limits ({}) in {} (lines {} to {}), {}',
    'Last über ihren Grenzen ({1}) in {2} (Zeilen {3} bis {4}), {5}',
  ],
  [
    'load below its limits ({}) in {} (lines {} to {}), {}',
    'Last unter ihren Grenzen ({1}) in {2} (Zeilen {3} bis {4}), {5}',
  ],
  [
    'pressure above its limits ({}) in {} (lines {} to {}), {}',
    'Druck über seinen Grenzen ({1}) in {2} (Zeilen {3} bis {4}), {5}',
  ],
  [
    'pressure below its limits ({}) in {} (lines {} to {}), {}',
    'Druck unter seinen Grenzen ({1}) in {2} (Zeilen {3} bis {4}), {5}',
  ],
  [
    'ambient temperature above its limits ({}) in {} (lines {} to {}), {}',
    'Umgebungstemperatur über ihren Grenzen ({1}) in {2} (Zeilen {3} bis {4}), {5}',
  ],
  [
    'ambient temperature below its limits ({}) in {} (lines {} to {}), {}',
    'Umgebungstemperatur unter ihren Grenzen ({1}) in {2} (Zeilen {3} bis {4}), {5}',
  ],
  [
    'load arm lifted while turning in {} (lines {} to {}), {}',
    'Lastarm im Lauf gehoben in {1} (Zeilen {2} bis {3}), {4}',
  ],
  ['{} counted while the drum stood, in {}', '{1} gezählt, während die Trommel stand, in {2}'],
  [
    '{} up to rows at standstill, to which the drum ran down, in {}',
    '{1} bis zu Zeilen im Stillstand, auf die die Trommel auslief, bei {2}',
  ],
  ['tyres ran at {} positions of the drum', 'Reifen liefen an {1} Positionen der Trommel'],
  [
    'counter and revolutions make {} m of diameter, the rig states {} m, {} % apart',
    'Zähler und Umdrehungen ergeben {1} m Durchmesser, der Prüfstand nennt {2} m, {3} % auseinander',
  ],
  ['the tyre reached {} °C, limit {} °C', 'der Reifen erreichte {1} °C, Grenze {2} °C'],
  ['no look near {} km, where one was planned', 'keine Inspektion bei {1} km, wo eine geplant war'],
  ['{} {} h before the failure was noted', '{1} {2} h, bevor das Versagen vermerkt wurde'],
  ['{} at {} km, and the tyre ran to {} km', '{1} bei {2} km, und der Reifen lief bis {3} km'],
  [
    'the look at {} km that found it failed has no photo',
    'die Inspektion bei {1} km, die das Versagen fand, hat kein Foto',
  ],
  [
    'one tyre failed at {} km, and {} came off there',
    'ein Reifen versagte bei {1} km, und {2} wurden dort abgenommen',
  ],
  ['used before ({})', 'zuvor gebraucht ({1})'],
  ['block {} ended after {} km of {} km', 'Abschnitt {1} endete nach {2} km von {3} km'],
  ['gauge {} was due on {}', 'Messmittel {1} war am {2} fällig'],
  [
    'the reference at {} is outside its limits, and not settled',
    'die Referenz bei {1} liegt außerhalb ihrer Grenzen und ist nicht geklärt',
  ],
  [
    'the reference is outside its limits, and not settled',
    'die Referenz liegt außerhalb ihrer Grenzen und ist nicht geklärt',
  ],
  ['the drum stood for {}', 'die Trommel stand {1}'],
  ['nothing was logged for {}, and the counter stood', '{1} nichts aufgezeichnet, und der Zähler stand'],
  ['the wheel stood under load for {}', 'das Rad stand {1} unter Last'],
  [
    'the counter gained {} km where the integral of speed is {} km, {} % apart',
    'der Zähler stieg um {1} km, das Integral der Geschwindigkeit ist {2} km, {3} % auseinander',
  ],
  [
    'nothing was logged while the drum ran: {} from the row before, {} by the counter',
    'nichts aufgezeichnet, während die Trommel lief: {1} seit der Zeile davor, {2} nach dem Zähler',
  ],
  [
    'nothing was logged while the drum ran: {} from the row before',
    'nichts aufgezeichnet, während die Trommel lief: {1} seit der Zeile davor',
  ],
  [
    'nothing was logged, and the counter began anew: {} from the row before',
    'nichts aufgezeichnet, und der Zähler begann neu: {1} seit der Zeile davor',
  ],
  [
    'the counter jumped: {} from the row before, {} by the counter',
    'der Zähler sprang: {1} seit der Zeile davor, {2} nach dem Zähler',
  ],
  [
    'the counter fell: {} from the row before, {} by the counter',
    'der Zähler fiel: {1} seit der Zeile davor, {2} nach dem Zähler',
  ],
  [
    'the counter ran over: {} from the row before, {} by the counter',
    'der Zähler lief über: {1} seit der Zeile davor, {2} nach dem Zähler',
  ],
  [
    'the clock stepped: {} from the row before, {} by the counter',
    'die Uhr sprang: {1} seit der Zeile davor, {2} nach dem Zähler',
  ],
  ['the clock stepped: {} from the row before', 'die Uhr sprang: {1} seit der Zeile davor'],
  [
    'time and counter stepped back together: {} from the row before, {} by the counter',
    'Zeit und Zähler sprangen zusammen zurück: {1} seit der Zeile davor, {2} nach dem Zähler',
  ],
  [
    '{} written twice with other values: look which of the two is right',
    '{1} zweimal mit anderen Werten geschrieben: zu prüfen ist, welche richtig sind',
  ],
  ['{} more of this kind ({}); in all {}: {}', '{1} weitere dieser Art; insgesamt {3}: {4}'],
  ['tread depth {} mm read on a hot tyre', 'Profiltiefe {1} mm an heißem Reifen gelesen'],
  ['at {} km read at {}, first at {}', 'bei {1} km gelesen an {2}, zuerst an {3}'],
  ['at {} km the tread is {} mm deeper than before', 'bei {1} km ist das Profil {2} mm tiefer als zuvor'],
  ['noted as {} ({})', 'notiert als {1} ({2})'],
  ['noted as {}', 'notiert als {1}'],
  ['ended by {}, suspended at {} km', 'beendet durch {1}, suspendiert bei {2} km'],
  [
    'failed between {} km and {} km, {} % of its life apart',
    'versagt zwischen {1} km und {2} km, {3} % seiner Lebensdauer auseinander',
  ],
  ['{} without a value in {}, {}', '{1} ohne Wert in {2}, {3}'],
  ['{} stood at {} to the last digit for {}', '{1} stand {3} lang auf die letzte Ziffer bei {2}'],
  [
    '{} is exactly {}, its highest value, in {}: the end of a range',
    '{1} ist genau {2}, sein höchster Wert, in {3}: das Ende eines Bereichs',
  ],
];
