import type { Template } from './translate.ts';

/** What deviations do to the estimate, in German. */
export const GERMAN_EFFECTS: readonly Template[] = [
  ['the height as it was is used', 'die Höhe, wie sie war, wird verwendet'],
  [
    'the interval of this specimen is as wide as the step was, and stays right',
    'der Bereich dieses Reifens ist so breit wie die Stufe war und bleibt richtig',
  ],
  [
    'the highest survived height still bounds the strength from below',
    'die höchste überstandene Höhe begrenzt die Festigkeit weiter nach unten',
  ],
  ['the likelihood holds, the count formula does not', 'die Likelihood gilt, die Zählformel nicht'],
  [
    'the estimate holds, but noted heights must not be compared with those of another start',
    'der Schätzwert gilt, notierte Höhen dürfen aber nicht mit denen anderen Anfangs verglichen werden',
  ],
  [
    'the strength is known only to lie below this height',
    'von der Festigkeit ist nur bekannt, dass sie unter dieser Höhe liegt',
  ],
  [
    'the strength is known only to lie above it',
    'von der Festigkeit ist nur bekannt, dass sie darüber liegt',
  ],
  ['the data give a bound at most', 'die Daten geben höchstens eine Schranke'],
  ['the interval is wider than planned', 'der Bereich ist breiter als geplant'],
  ["the log's mass is used", 'die Masse der Messdatei wird verwendet'],
  [
    'the energy is overstated by about twice this share',
    'die Energie ist um etwa das Doppelte dieses Anteils zu hoch',
  ],
  [
    'speed or height is wrong, and the drop is left out of the estimate',
    'Geschwindigkeit oder Höhe ist falsch, und der Schlag bleibt aus dem Schätzwert',
  ],
  [
    'friction in the guide is not shown to be absent there',
    'dass dort keine Reibung in der Führung war, ist nicht gezeigt',
  ],
  ['the energies drift with it', 'die Energien wandern mit'],
  ['the drop is left out of the estimate', 'der Schlag bleibt aus dem Schätzwert'],
  [
    'the energy is off by the difference of the contact heights',
    'die Energie ist um den Unterschied der Berührhöhen verschoben',
  ],
  [
    'results are comparable only within one state of it',
    'Ergebnisse sind nur innerhalb eines Zustands vergleichbar',
  ],
  ['nothing holds since the last good check', 'seit der letzten guten Prüfung gilt nichts'],
  [
    'the condition adds to the uncertainty, the drop stays in',
    'die Bedingung trägt zur Unsicherheit bei, der Schlag bleibt',
  ],
  ['later hits of the specimen meet a softer tyre', 'spätere Schläge treffen einen weicheren Reifen'],
  [
    'the pressure differs by about half a per cent a kelvin',
    'der Druck weicht um etwa ein halbes Prozent je Kelvin ab',
  ],
  [
    'the pressures are not traceable since its last good check',
    'die Drücke sind seit der letzten guten Prüfung nicht rückführbar',
  ],
  [
    'the temperature of the tyre is not that of the room',
    'die Temperatur des Reifens ist nicht die des Raums',
  ],
  ['the rubber is not yet what will be sold', 'der Gummi ist noch nicht, was verkauft wird'],
  [
    'it cannot be told apart from the difference between constructions',
    'es lässt sich vom Unterschied der Konstruktionen nicht trennen',
  ],
  [
    'the result is provisional until a check passes',
    'das Ergebnis ist vorläufig, bis eine Prüfung bestanden ist',
  ],
  ['the result of the day waits for the cause', 'das Ergebnis des Tages wartet auf die Ursache'],
  [
    'the drop stays in, and may be weakened by its neighbour',
    'der Schlag bleibt und kann durch seinen Nachbarn geschwächt sein',
  ],
  ['the row is ignored', 'die Zeile wird übergangen'],
  ['the casing was damaged before', 'die Karkasse war schon beschädigt'],
  ['the edge that cuts is another one from here on', 'die schneidende Kante ist von hier an eine andere'],
  ['the tube may carry part of a difference', 'der Schlauch kann einen Teil eines Unterschieds tragen'],
  ['small leaks may be hidden', 'kleine Lecks können verborgen sein'],
  [
    'it is not a failure of the tyre, and the drop is left out of the estimate',
    'es ist kein Ausfall des Reifens, und der Schlag bleibt aus dem Schätzwert',
  ],
  [
    'the amended outcome is used, both are kept',
    'das geänderte Ergebnis wird verwendet, beide bleiben erhalten',
  ],
  ['the outcome rests on one of two readings', 'das Ergebnis ruht auf einer von zwei Ablesungen'],
  ['a drop may be missing from the log', 'in der Messdatei kann ein Schlag fehlen'],
  ['the tyre had less or more time to recover', 'der Reifen hatte weniger oder mehr Zeit zur Erholung'],
  ['drops may be missing from the log', 'in der Messdatei können Schläge fehlen'],
  ['its drops are left out of the estimate', 'seine Schläge bleiben aus dem Schätzwert'],
  [
    'its drops are kept and left out of the estimate',
    'seine Schläge bleiben erhalten und außerhalb des Schätzwerts',
  ],
  ['the measured value says nothing', 'der gemessene Wert sagt nichts'],
  ['the estimate is given without and with it', 'der Schätzwert wird ohne ihn und mit ihm gegeben'],
  ['results are judged by their own version', 'Ergebnisse werden nach ihrer eigenen Version beurteilt'],
  [
    'they stay in, and the planned precision no longer describes the series',
    'sie bleiben, und die geplante Genauigkeit beschreibt die Reihe nicht mehr',
  ],
  [
    'these kilometres do not count as run at the set condition',
    'diese Kilometer zählen nicht als unter der Bedingung gelaufen',
  ],
  [
    'the counter is used; look for a wrong diameter, a slipping pick-up or a jump',
    'der Zähler wird verwendet; nach falschem Durchmesser, rutschendem Abnehmer oder Sprung suchen',
  ],
  [
    'in a test with the valve closed the pressure is not corrected; its slope begins anew',
    'in einer Prüfung mit geschlossenem Ventil wird der Druck nicht berichtigt; seine Steigung beginnt neu',
  ],
  [
    'its readings prove nothing here; rely on inspections',
    'seine Anzeigen beweisen hier nichts; es gelten die Besichtigungen',
  ],
  ['the tyre ran cooler than the protocol asks', 'der Reifen lief kühler, als der Prüfplan verlangt'],
  ['the tyre cooled down and started again cold', 'der Reifen kühlte ab und lief kalt wieder an'],
  [
    'a flat spot may have formed; look at vibration and growth',
    'ein Standplatten kann entstanden sein; auf Schwingung und Wachstum achten',
  ],
  ['these kilometres stand apart as unverified', 'diese Kilometer stehen getrennt als unbestätigt'],
  [
    'the distance run in it is not known; take it from the inspections',
    'die darin gelaufene Strecke ist nicht bekannt; sie ist den Besichtigungen zu entnehmen',
  ],
  [
    'the counter orders the rows, time is not known better',
    'der Zähler ordnet die Zeilen, die Zeit ist nicht besser bekannt',
  ],
  [
    'the life is an interval, and no point is read into it',
    'die Lebensdauer ist ein Bereich, und kein Punkt wird hineingelesen',
  ],
  [
    'this reading is left out of the wear line: rubber and air are larger hot than cold',
    'diese Ablesung bleibt aus der Abriebgeraden: Gummi und Luft sind heiß größer als kalt',
  ],
  [
    'means of other points scatter more: the wear line is less sure than it says',
    'Mittel anderer Punkte streuen mehr: die Abriebgerade ist unsicherer, als sie sagt',
  ],
  [
    'another direction or position begins another pattern of wear',
    'andere Richtung oder Lage beginnt ein anderes Abriebbild',
  ],
  [
    'look whether the drums differ before its life is pooled with others',
    'vor dem Vereinigen mit anderen Lebensdauern ist zu prüfen, ob die Trommeln verschieden sind',
  ],
  [
    'the tyre counts as taken off unfailed at the distance that it survived',
    'der Reifen zählt als unversehrt abgenommen bei der überstandenen Strecke',
  ],
  [
    'a suspension; if it was taken off because of how it looked, it says more than that it lasted so far',
    'eine Suspension; wurde er wegen seines Aussehens abgenommen, sagt das mehr, als dass er so weit hielt',
  ],
  ['wear before and after is not comparable', 'Abrieb davor und danach ist nicht vergleichbar'],
  ['look whether the tyre was cut by it', 'zu prüfen ist, ob der Reifen dadurch geschnitten wurde'],
  [
    'measure again: a point moved, or the tyre was hot',
    'neu messen: ein Punkt war ein anderer, oder der Reifen war heiß',
  ],
  [
    'one law is fitted to all, and one to each cause with the others as suspensions; compare them',
    'eine Verteilung ist an alle angepasst, und je eine an jede Ursache mit den übrigen als Suspensionen; vergleichen',
  ],
  ['its distance counts once', 'seine Strecke zählt einmal'],
  [
    'who let it run on, and why, is asked of the lab',
    'wer es weiterlaufen ließ und warum, ist das Labor zu fragen',
  ],
  [
    'the protocol weighs it heavier than usual (heavier): {}',
    'der Prüfplan wiegt es schwerer als üblich (heavier): {1}',
  ],
  ['the stretch is left out', 'der Abschnitt bleibt aus'],
  [
    'the drops of the specimen are left out of the estimate',
    'die Schläge des Reifens bleiben aus dem Schätzwert',
  ],
  ['no estimate can be trusted', 'auf keinen Schätzwert ist Verlass'],
  ['it was settled, and the result stands', 'es wurde geklärt, und das Ergebnis steht'],
  [
    'friction beyond 3 % leaves the drop out of the estimate',
    'Reibung über 3 % lässt den Schlag aus dem Schätzwert',
  ],
  ['the measured speed gives the energy', 'die gemessene Geschwindigkeit gibt die Energie'],
  [
    'without it the drop has no energy, and is left out of the estimate',
    'ohne sie hat der Schlag keine Energie und bleibt aus dem Schätzwert',
  ],
  [
    'that is beyond twice the tolerance, and the drop is left out of the estimate',
    'das ist jenseits der doppelten Toleranz, und der Schlag bleibt aus dem Schätzwert',
  ],
  [
    'that is more than {} K off, and the drop is left out of the estimate',
    'das sind mehr als {1} K, und der Schlag bleibt aus dem Schätzwert',
  ],
  [
    'the drop stays in, and may have met a weaker or stiffer place',
    'der Schlag bleibt und kann eine schwächere oder steifere Stelle getroffen haben',
  ],
  [
    'that hit was left out, but has loaded the tyre there; the drop stays in',
    'jener Schlag blieb aus, hat den Reifen dort aber belastet; der Schlag bleibt',
  ],
  [
    'another material is another test: its drops are left out',
    'anderer Werkstoff ist eine andere Prüfung: seine Schläge bleiben aus',
  ],
  [
    'the protocol goes on at a new site; the casing was damaged before',
    'der Prüfplan macht an neuer Stelle weiter; die Karkasse war schon beschädigt',
  ],
  [
    'the start is too high for these tyres: start lower and repeat',
    'der Anfang ist für diese Reifen zu hoch: tiefer anfangen und wiederholen',
  ],
  ['the criterion is invalid', 'das Kriterium ist ungültig'],
  [
    'a slow leak that one way finds, the other may not',
    'ein langsames Leck, das der eine Weg findet, findet der andere vielleicht nicht',
  ],
  [
    'a tyre that was loaded before is another specimen, and its drops are left out of the estimate',
    'ein früher belasteter Reifen ist ein anderer, und seine Schläge bleiben aus dem Schätzwert',
  ],
  [
    'the drop is left out of the estimate and repeated at its height',
    'der Schlag bleibt aus dem Schätzwert und wird auf seiner Höhe wiederholt',
  ],
  [
    'it is left out of the estimate, and has no outcome to be taken back with',
    'er bleibt aus dem Schätzwert und hat kein Ergebnis, mit dem er zurückgenommen werden könnte',
  ],
  [
    'most go up after a failure and down after a survival: check which words of the log mean failed and survived (outcomes in the rig), or amend them',
    'die meisten gehen nach einem Ausfall hinauf und nach einem Überstehen hinab: zu prüfen ist, welche Wörter der Messdatei versagt und überstanden heißen, oder sie sind zu ändern',
  ],
  [
    'this protocol did not make the log: name the one that did, or one of fixed levels, whose drops may come in any order; amend what was written wrongly',
    'dieser Prüfplan hat die Messdatei nicht gemacht: den nennen, der es tat, oder einen mit festen Stufen, deren Schläge in beliebiger Folge kommen dürfen; falsch Geschriebenes ändern',
  ],
  ['its drops after the failure are ignored', 'seine Schläge nach dem Ausfall werden übergangen'],
  [
    'every distance is wrong by that share; measure the drum and correct the counter',
    'jede Strecke ist um diesen Anteil falsch; die Trommel ist zu messen und der Zähler zu berichtigen',
  ],
  [
    'the tyre was not hit as planned since then; take the interval from the last good look',
    'der Reifen wurde seither nicht wie geplant getroffen; der Bereich zählt ab dem letzten guten Blick',
  ],
  [
    'the life is one of two tests; split it there',
    'die Lebensdauer ist eine aus zwei Prüfungen; sie ist dort zu trennen',
  ],
  [
    'readings before and after it are not of one place',
    'Ablesungen davor und danach sind nicht von einer Stelle',
  ],
  [
    'rubber softens and ages faster; look for reversion',
    'Gummi wird weich und altert schneller; auf Reversion ist zu achten',
  ],
  [
    'a failure is known less closely: its interval is wider',
    'ein Versagen ist ungenauer bekannt: sein Bereich ist weiter',
  ],
  [
    'the life may have ended at the sign; take the interval from the last good sample',
    'die Lebensdauer kann beim Anzeichen geendet haben; der Bereich zählt ab dem letzten guten Messwert',
  ],
  [
    'part of the damage may be of the kilometres behind the sign',
    'ein Teil des Schadens kann von den Kilometern nach dem Anzeichen stammen',
  ],
  [
    'the others are suspensions at that distance; one failure says little of the shape',
    'die anderen sind bei dieser Strecke suspendiert; ein Versagen sagt wenig über die Form',
  ],
  [
    'its life is of no one schedule and is not pooled with others',
    'seine Lebensdauer gehört zu keinem einen Ablauf und wird nicht mit anderen zusammengelegt',
  ],
  [
    'its life is of a loaded tyre; keep it apart from those of new ones',
    'seine Lebensdauer ist die eines belasteten Reifens; sie ist von der neuer zu trennen',
  ],
  [
    'it wore on one side; its wear is not compared with that of others',
    'er nutzte sich einseitig ab; sein Verschleiß wird nicht mit dem anderer verglichen',
  ],
  ['the first kilometres were run on a cold tyre', 'die ersten Kilometer liefen auf kaltem Reifen'],
  [
    'the blocks behind it were run on a tyre of another past than planned',
    'die Abschnitte danach liefen auf einem Reifen mit anderer Vorgeschichte als geplant',
  ],
  [
    'what it read is checked back once the gauge is calibrated again',
    'was es anzeigte, wird rückwirkend geprüft, sobald es wieder kalibriert ist',
  ],
  [
    'the drum may have drifted; nothing is corrected for it but by a written rule',
    'die Trommel kann gewandert sein; berichtigt wird nur nach einer geschriebenen Regel',
  ],
  [
    'vibration and heat of one reach the other; compare within the run of the drum',
    'Schwingung und Wärme des einen erreichen den anderen; verglichen wird innerhalb des Trommellaufs',
  ],
  [
    'a drum that stood ran no kilometres; the ledger is used',
    'eine stehende Trommel lief keine Kilometer; verwendet wird das Streckenbuch',
  ],
  ['the cause rests on the words of whoever looked', 'die Ursache ruht auf den Worten dessen, der hinsah'],
];
