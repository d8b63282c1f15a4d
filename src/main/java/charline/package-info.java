/** charline: a test-patch logbook and trials analyser for laser stripping of wood. */
package charline;
