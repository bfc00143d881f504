/**
 * The service: routes, what a request must look like, and one shape for everything that goes wrong (RFC 9457), the web server's own
 * pages included. Nothing here outlives a request.
 */
@NullMarked
package org.stockcutting.http.wire;

import org.jspecify.annotations.NullMarked;
