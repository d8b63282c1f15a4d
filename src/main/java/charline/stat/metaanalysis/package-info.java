/** Quantities that are alike but not the same, estimated together. */
package charline.stat.metaanalysis;
