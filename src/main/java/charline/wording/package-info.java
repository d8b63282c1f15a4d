/**
 * Answers in English and in JSON. The packages below hand over types with values; every sentence
 * made of them is here. Knows no option of the command line and no HTTP.
 */
package charline.wording;
