/** Bytes of characters that structure a text. */
export const TAB = 0x09;
export const LINE_FEED = 0x0a;
export const FORM_FEED = 0x0c;
export const CARRIAGE_RETURN = 0x0d;
export const CONTROL_Z = 0x1a;
export const ESCAPE = 0x1b;
export const SPACE = 0x20;
export const EXCLAMATION = 0x21;
export const HASH = 0x23;
export const PLUS = 0x2b;
export const COMMA = 0x2c;
export const MINUS = 0x2d;
export const POINT = 0x2e;
export const ZERO = 0x30;
export const SEMICOLON = 0x3b;
export const BRACKET = 0x5b;
export const BAR = 0x7c;
