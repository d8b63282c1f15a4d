/**
 * Picture files: what kind they are, how large, and the picture without what else was put into the
 * file.
 *
 * <p>This package must know nothing of logs and patches.
 *
 * <h2>Decisions</h2>
 *
 * <p>A file is cut at the borders of its parts and never decoded, so that the picture stays as the
 * camera made it and a file of 12 MB costs 12 MB. How the picture is to be turned therefore stays
 * in the file as its only note, which every browser follows. Rejected: turning the pixels, which
 * costs 200 MB for a picture of 50 megapixels and loses some of it in a JPEG.
 *
 * <p>Parts are kept by a list of those that a picture needs, not dropped by a list of those that
 * say too much: a device may add what nobody here has heard of. The colour profile stays, because a
 * tint is judged by its colour.
 */
package charline.picture;
