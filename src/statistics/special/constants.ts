/** ½ ln 2π */
export const LOG_ROOT_TWO_PI = 0.9189385332046728;
