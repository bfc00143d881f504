/**
 * The commands: plan, sure, check, review, serve. They read files, call the library, print for people, and tell scripts by the exit status.
 */
@NullMarked
package org.stockcutting.http.cli;

import org.jspecify.annotations.NullMarked;
