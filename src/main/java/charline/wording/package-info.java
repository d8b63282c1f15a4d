/**
 * What the analysis found, in English and in JSON. The packages below hand over types with values;
 * every sentence that is made of them stands here.
 */
package charline.wording;
