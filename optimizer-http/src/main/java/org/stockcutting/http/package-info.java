/**
 * The library on the command line and over HTTP. {@code cli} holds the commands, {@code wire} the service, {@code print} what people
 * read.
 */
@NullMarked
package org.stockcutting.http;

import org.jspecify.annotations.NullMarked;
