import type { Words } from './english.ts';
import { germanCharts } from './german-charts.ts';
import { germanEvidence } from './german-evidence.ts';
import { germanSections } from './german-sections.ts';
import { germanStudies } from './german-studies.ts';
import { enumerated, splitWords } from './named-quantity.ts';

const QUANTITIES: Readonly<Record<string, string>> = {
  medianFailureEnergy: 'mittlere Versagensenergie',
  medianFailureHeight: 'mittlere Versagenshöhe',
  medianFailureMass: 'mittlere Versagensmasse',
  characteristicLife: 'charakteristische Lebensdauer',
  weibullShape: 'Weibull-Form',
  lifeQuantile: 'Quantil der Lebensdauer',
  wearRate: 'Abrieb je Strecke',
  reliability: 'Überlebensanteil',
  equivalentDistance: 'gleichwertige Strecke',
  referredPressure: 'Druck, auf eine Temperatur bezogen',
  mass: 'Masse',
  width: 'Breite',
};

const METHODS: Readonly<Record<string, string>> = {
  'censored-likelihood': 'zensierte Likelihood',
  'profile-likelihood': 'Profil-Likelihood',
  'up-and-down-count': 'Auszählung des Treppenverfahrens',
  'mean-of-noted-heights': 'Mittel der notierten Höhen',
  'mean-of-levels': 'Mittel der Stufen',
  isotonic: 'isotone Ausfallkurve',
  'centred-isotonic': 'zentrierte isotone Ausfallkurve',
  'spearman-karber': 'Spearman–Kärber',
  nonparametric: 'verteilungsfrei (Turnbull)',
  'order-limits': 'verteilungsfrei',
  'small-sample': 'kleine Stichprobe, Streuung gleich der Stufe',
  'bias-corrected': 'von Verzerrung befreit',
  'bias-corrected-spread': 'Streuung aus der Auszählung, mal n/(n − 3)',
  'tolerance-factor': 'klassische Grenze mit Toleranzfaktor',
  'specimen-effect': 'mit Reifeneffekt',
  'palmgren-miner': 'Palmgren–Miner',
  'exponent-uncertainty': 'Unsicherheit des Exponenten',
  'ideal-gas': 'ideales Gas',
  'success-run': 'Zählung ohne Ausfall',
  'straight-line': 'Gerade',
  regression: 'Regression',
  'greenwood-log': 'Greenwood (log)',
  'large-sample': 'große Stichprobe',
  fieller: 'Fieller',
  'student-t': 'Student-t',
  wald: 'Wald',
  calibrated: 'kalibriert',
  exact: 'exakt',
  'up-and-down': 'Treppenverfahren',
  'transformed-up-and-down': 'abgewandeltes Treppenverfahren',
  'rising-height': 'steigende Höhe',
  'fixed-level': 'feste Stufen',
  langlie: 'nach Langlie',
  'd-optimal': 'D-optimal',
};

const VARIANTS: Readonly<Record<string, string>> = {
  'before-amendments': 'vor den Änderungen',
  'between-tyres': 'zwischen Reifen',
  'from-hit-to-hit': 'von Schlag zu Schlag',
  'single-hit-on-a-fresh-tyre': 'ein Schlag auf einen frischen Reifen',
  'with-unexplained-exclusions': 'mit den ohne Grund ausgelassenen',
  'with-exclusions': 'mit allen ausgelassenen',
};

const CHANNELS: Readonly<Record<string, string>> = {
  speed: 'Geschwindigkeit',
  load: 'Last',
  pressure: 'Druck',
  temperature: 'Temperatur',
  mass: 'Masse',
  construction: 'Konstruktion',
  'tyre temperature': 'Reifentemperatur',
  'ambient temperature': 'Umgebungstemperatur',
  'arm height': 'Höhe des Arms',
};

function variantName(name: string): string {
  const [, tyre] = /^tyre (.*)$/su.exec(name) ?? [];
  if (tyre !== undefined) return `Reifen ${tyre}`;
  const [, cause] = /^cause: (.*)$/su.exec(name) ?? [];
  if (cause !== undefined) return `Ursache: ${cause}`;
  const [, adjusted] = /^adjusted-to-(.*)$/su.exec(name) ?? [];
  if (adjusted !== undefined) {
    const conditions = adjusted.split('-and-').map((condition) => CHANNELS[condition] ?? condition);
    return `auf den Prüfplan bezogen: ${conditions.join(', ')}`;
  }
  return VARIANTS[name] ?? METHODS[name] ?? name.replaceAll('-', ' ');
}

const ROLES: Readonly<Record<string, string>> = {
  mountings: 'Montagen',
  checks: 'Prüfungen des Prüfstands',
  log: 'Messdatei',
  protocol: 'Prüfplan',
  rig: 'Prüfstand',
  construction: 'Konstruktion',
  specification: 'Spezifikation',
  run: 'Prüfung',
  specimens: 'Reifenliste',
  amendments: 'Änderungen',
  inspections: 'Besichtigungen',
  events: 'Ereignisse',
};

const LAWS: Readonly<Record<string, string>> = {
  normal: 'Normalverteilung',
  lognormal: 'Lognormalverteilung',
  logistic: 'logistische Verteilung',
  weibull: 'Weibull-Verteilung',
};

/** The German words of a report. */
export const german: Words = {
  charts: germanCharts,
  ...germanSections,
  ...germanStudies,
  ...germanEvidence,
  between: (lower, upper) => `${lower} bis ${upper}`,
  from: (lower) => `ab ${lower}, nach oben offen`,
  upTo: (upper) => `nach unten offen, bis ${upper}`,
  open: 'nach beiden Seiten offen',
  tyres: (count) => `${count} Reifen`,
  drops: (count) => `${count} ${count === 1 ? 'Schlag' : 'Schläge'}`,
  failures: (count) => `${count} ${count === 1 ? 'Ausfall' : 'Ausfällen'}`,
  list: (names, most = 6) => enumerated(names, most, 'und', (rest) => `${rest} weitere`),
  sample: (of) =>
    `${of.tyres}; ${of.drops}, ${of.valid} gültig: ${of.failed} versagt, ${of.survived} überstanden${of.out > 0 ? `; ${of.out} ausgelassen` : ''}`,
  quantity: ({ quantity, probability, at, unit, variant }, share) => {
    switch (quantity) {
      case 'failureEnergyQuantile':
        return probability === undefined
          ? 'Quantil der Versagensenergie'
          : `Energie, bei der ${share} versagen`;
      case 'energySpread':
        if (variant === 'between-tyres' || variant === 'from-hit-to-hit')
          return `Streuung ${variantName(variant)}`;
        return unit === '1' ? 'Streuung von ln Energie' : 'Streuung der Versagensenergie';
      case 'lifeQuantile':
        return `Strecke, nach der ${share} versagt haben`;
      case 'wearLife':
        return 'Strecke bis zur Verschleißgrenze';
      case 'reliability':
        return at === undefined ? 'Überlebensanteil' : `Überlebensanteil bei ${at} km`;
      default:
        return (
          (QUANTITIES[quantity] ?? splitWords(quantity)) + (probability === undefined ? '' : `, ${share}`)
        );
    }
  },
  method: (name) => METHODS[name] ?? name.replaceAll('-', ' '),
  variant: variantName,
  channel: (name) => CHANNELS[name] ?? name,
  law: (name) => LAWS[name] ?? name,
  energyDefinition: {
    potential: 'potentiell, m·g·h',
    'potential-with-compression': 'potentiell, mit dem Weg der Stauchung',
    kinetic: 'kinetisch, ½·m·v²',
  },
  fallingMass: (mass, gravity) =>
    `${mass === null ? 'm wie Schlag für Schlag aufgezeichnet' : `m = ${mass} kg`}; g = ${gravity} m/s²`,
  role: (name) => ROLES[name] ?? name,
  verdict: {
    pass: 'bestanden',
    fail: 'nicht bestanden',
    inconclusive: 'keine Entscheidung',
    'not-tested': 'nicht geprüft',
    invalid: 'ungültig',
    waived: 'erlassen',
    external: 'extern',
  },
  severity: { note: 'Hinweis', minor: 'gering', invalidating: 'macht ungültig' },
  status: {
    conforming: 'Der Prüfplan wurde eingehalten.',
    deviating: 'Der Prüfplan wurde nicht in allen Punkten eingehalten.',
    invalid: 'Der Prüfplan wurde für ein Urteil zu weit verletzt.',
  },
  answer: {
    half: (of) => `Von ${of.what} versagt die Hälfte bei etwa ${of.value}.`,
    noValue: (of) =>
      `Die Schläge auf ${of.what} geben keinen einzelnen Wert für die Energie, bei der die Hälfte versagt.`,
    interval: (of) => `Der ${of.level}-Bereich ist ${of.range}, aus ${of.drops} auf ${of.tyres}.`,
    noInterval: (of) => `Es gibt keinen Bereich, aus ${of.drops} auf ${of.tyres}.`,
    noEstimate: (of) => `Zu ${of.what} gibt es keinen Schätzwert.`,
    pass: (of) =>
      `Die Grenzen von ${of.specification} sind in allem, was beurteilt wurde, eingehalten: ${of.judged}.`,
    fail: (of) => `Die Grenzen von ${of.specification} sind nicht eingehalten: ${of.failed}.`,
    open: (of) =>
      `Ob die Grenzen von ${of.specification} eingehalten sind, ist nicht entschieden: ${of.open}.`,
    broken: 'Der Prüfplan wurde zu weit verletzt; auf die Zahlen ist kein Verlass.',
    noSpecification: 'Gegen eine Spezifikation wurde nicht geurteilt.',
    onlyHere:
      'Der Wert hängt an diesem Anfang und dieser Stufe und ist nur mit solchen Prüfungen vergleichbar.',
    lasts: (of) => `Von ${of.what} hält die Hälfte etwa ${of.value} auf der Trommel.`,
    noLife: (of) =>
      `Die Lebensdauern von ${of.what} geben keinen einzelnen Wert für die Strecke, die die Hälfte hält.`,
    tyresOf: (names) => `Reifen ${names}`,
    theseTyres: 'diesen Reifen',
    more: (of) => `${of.id}: etwa ${of.tyres} mehr würden entscheiden.`,
    noMore: (id) => `${id}: wie viele Reifen mehr entscheiden würden, lässt sich nicht rechnen.`,
    notTested: (ids) => `Noch nicht geprüft: ${ids}.`,
    failed: (ids) => `Die Konstruktion muss geändert oder die Grenze neu vereinbart werden: ${ids}.`,
    external: (ids) => `Von einem akkreditierten Labor zu zeigen: ${ids}.`,
    settled: 'Aus dieser Prüfung bleibt nichts offen.',
    decides: (text) => `Entscheidung: ${text}`,
    nobody: 'Wer entscheidet, ist nicht angegeben.',
    heavier: (of) => `${of.value}${of.range === null ? '' : ` (${of.range})`}`,
  },
  criteria: {
    criterion: 'Kriterium',
    together: 'alle zusammen',
    asks: 'verlangt',
    found: 'gefunden',
    distance: 'Schranke und Abstand zur Grenze',
    verdict: 'Urteil',
    why: 'warum',
    atLeast: (value) => `mindestens ${value}`,
    atMost: (value) => `höchstens ${value}`,
    eachTyre: (quantity) => `${quantity} jedes Reifens`,
    spare: (of) => `zu ${of.confidence} sicher ${of.bound}; ${of.distance} Abstand`,
    short: (of) => `zu ${of.confidence} sicher ${of.bound}; es fehlen ${of.distance}`,
    across: (of) => `Grenze liegt zwischen den ${of.confidence}-Schranken ${of.lower} und ${of.upper}`,
    open: 'offen',
    atLeastBound: (value) => `mindestens ${value}`,
    atMostBound: (value) => `höchstens ${value}`,
    measured: (of) =>
      `${of.specimens} gemessen${of.missing > 0 ? `, ${of.missing} nicht` : ''}; ${of.beyond === 0 ? 'alle halten sie ein' : `${of.beyond} nicht`}`,
    notCounted: 'hier nicht gezählt',
    more: (count) => `und ${count} weitere Kriterien, im vollen Bericht oder in tirelab analyze --json`,
    overall: (verdict) => `Urteil: ${verdict}`,
  },
  notShown: {
    drum: 'Lebensdauer auf der Straße, andere Lasten, Geschwindigkeiten, Drücke und Oberflächen: Kilometer auf der Trommel sind nichts davon.',
    few: (of) =>
      `Seltenes: das Ergebnis ruht auf ${of.failures} bei ${of.tyres}, frühe Ausfälle sind nur durch Verlängern der angenommenen Verteilung zu haben.`,
    road: 'Lebensdauer auf der Straße, andere Felgen, Schläuche, Drücke und Massen: Joule am Prüfstand sind nichts davon.',
    low: (of) =>
      `Kleine Anteile: mit ${of.tyres} ist die Energie, bei der 10 % oder weniger versagen, nur durch Verlängern der angenommenen Verteilung zu haben.`,
    batch: 'Streuung zwischen Chargen: die Reifen stehen für die, aus denen sie gezogen wurden.',
    criteria: (ids) => `Kriterien, die diese Prüfung nicht berührt: ${ids}.`,
    excluded: (drops) => `${drops} ausgelassen; der volle Bericht nennt die Gründe.`,
    apparatus: 'Die Unsicherheit des Prüfstands selbst; sie ist in den Bereichen nicht enthalten.',
  },
  cautions: {
    rising:
      'Ein Ergebnis mit steigender Höhe hängt an Anfangshöhe und Stufe; nur mit Prüfungen gleicher Masse, gleichen Anfangs, gleicher Stufe, gleichen Drucks, gleicher Felge und Schlagregel vergleichen.',
    repeats: (of) =>
      `${of.drops} auf ${of.tyres} sind wiederholte Blicke auf dieselben Reifen, hier als unabhängig genommen: die Bereiche sind wohl zu schmal.`,
    repeatsCalibrated: (of) =>
      `${of.drops} auf ${of.tyres} sind wiederholte Blicke auf dieselben Reifen: die kalibrierten Bereiche nehmen 70 % der Varianz zwischen Reifen an; alle anderen nehmen die Schläge als unabhängig und sind wohl zu schmal.`,
    narrow:
      'Bei 20 bis 50 Schlägen hielten nominelle 95-%-Bereiche in etwa 89 bis 95 % simulierter Treppenversuche: sie sind als etwas zu schmal zu lesen.',
    accredited:
      'Das Urteil ist eine Aussage innerhalb dieses Labors, es sei denn, es ist für dieses Verfahren akkreditiert.',
    drumAlways: [
      'Das Ergebnis gilt für die geprüften Reifen und diesen Prüfplan. Kilometer auf einer Trommel sind keine Lebensdauer auf der Straße.',
      'Es ersetzt weder ISO 4210, ISO 5775 und örtliche Regeln noch eine akkreditierte Prüfung und sagt nicht, dass ein Reifen verkauft werden darf.',
      'Nie an eine drehende Trommel greifen; warten, bis sie steht; Lauffläche und Bremse bleiben heiß. Unter der niedrigeren der Grenzen von Reifen und Felge bleiben. Das Programm kennt den Zustand des Prüfstands nicht und sagt nie, dass ein Eingriff sicher ist.',
    ],
    always: [
      'Das Ergebnis gilt für die geprüften Reifen und diesen Prüfplan. Joule eines Schlags sind keine Lebensdauer auf der Straße.',
      'Es ersetzt weder ISO 4210, ISO 5775 und örtliche Regeln noch eine akkreditierte Prüfung und sagt nicht, dass ein Reifen verkauft werden darf.',
      'Nie unter eine gehobene Masse greifen; von einem aufgepumpten Reifen fernbleiben und unter der niedrigeren der Grenzen von Reifen und Felge. Das Programm kennt den Zustand des Prüfstands nicht und sagt nie, dass ein Eingriff sicher ist.',
    ],
  },
};
