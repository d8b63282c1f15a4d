/** Values to text: tables of at most 80 columns, JSON, CSV, and numbers as a person writes them. */
package charline.cli.render;
