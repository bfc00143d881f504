package org.stockcutting.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Committed answers: compared byte for byte, or written anew with {@code -Dsamples.write=true}. */
final class Expected {

    static final String WAY_OUT = "if the change is wanted, run the samples' tests with -Dsamples.write=true, read the"
            + " difference and commit it";

    private static final Path FOLDER = Path.of("expected");

    private Expected() {}

    static void check(String name, String actual) {
        Path file = FOLDER.resolve(name);
        try {
            if (Boolean.getBoolean("samples.write")) {
                Files.createDirectories(FOLDER);
                Files.writeString(file, actual);
                return;
            }
            String wanted = Files.exists(file) ? Files.readString(file) : "";
            assertThat(actual).as("samples/expected/%s; %s", name, WAY_OUT).isEqualTo(wanted);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
