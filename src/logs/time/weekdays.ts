/**
 * Beginnings of the names of the days, from Sunday on, in languages that rigs write: English, German, French, Italian,
 * Spanish, Portuguese, Dutch, Polish, Czech, Japanese, Chinese. Some mean two days in two of them. From memory.
 */
const BEGINNINGS: readonly (readonly string[])[] = [
  ['su', 'so', 'zo', 'dim', 'dom', 'nie', 'ne', '日', '周日', '星期日'],
  ['mo', 'ma', 'lu', 'seg', 'po', '月', '周一', '星期一'],
  ['tu', 'di', 'ma', 'ter', 'wt', 'út', '火', '周二', '星期二'],
  ['we', 'mi', 'me', 'mer', 'wo', 'qua', 'śr', 'st', '水', '周三', '星期三'],
  ['th', 'do', 'je', 'gi', 'ju', 'qui', 'cz', 'čt', '木', '周四', '星期四'],
  ['fr', 've', 'vr', 'vi', 'sex', 'pi', 'pt', 'pá', '金', '周五', '星期五'],
  ['sa', 'sá', 'sob', 'so', 'za', '土', '周六', '星期六'],
];

/** Whether a name, short or long, can be that of a day of the week in some language: 0 is Sunday. */
export function isWeekday(name: string, day: number): boolean {
  const text = name.normalize('NFC').toLowerCase().replace(/\.$/, '');
  return BEGINNINGS[day]!.some((beginning) => text.startsWith(beginning));
}
