/**
 * The laws of strength or life that can be assumed. Each is a location–scale law: normal and logistic on x itself,
 * lognormal (normal) and Weibull (smallest extreme value) on ln x.
 */
export type LawName = 'normal' | 'lognormal' | 'logistic' | 'weibull';
