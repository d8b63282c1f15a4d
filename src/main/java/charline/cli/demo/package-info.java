/** The whole job on made-up trials, in a throw-away log. */
package charline.cli.demo;
