package charline.cache;

/** What follows in the bytes of a value. */
final class Tag {
  static final byte RECORD = 1;
  static final byte KNOWN_RECORD = 2;
  static final byte FORM = 3;
  static final byte ENUM = 4;
  static final byte STRING = 5;
  static final byte KNOWN_STRING = 6;
  static final byte ENDS_KNOWN = 7;
  static final byte DOUBLE = 8;
  static final byte INTEGER = 9;
  static final byte LONG = 10;
  static final byte FALSE = 11;
  static final byte TRUE = 12;
  static final byte EMPTY = 13;
  static final byte PRESENT = 14;
  static final byte NO_DOUBLE = 15;
  static final byte SOME_DOUBLE = 16;
  static final byte NO_INT = 17;
  static final byte SOME_INT = 18;
  static final byte LIST = 19;
  static final byte MAP = 20;
  static final byte DOUBLES = 21;
  static final byte ARRAY = 22;
  static final byte UUID = 23;
  static final byte TIME = 24;
  static final byte DATE = 25;
  static final byte INSTANT = 26;
  static final byte PATH = 27;
  static final byte SORTED = 28;
  static final byte SET = 29;
  static final byte BOOLEANS = 30;
  static final byte KNOWN_UUID = 31;

  private Tag() {}
}
