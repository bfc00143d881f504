package org.stockcutting.http.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import org.stockcutting.job.Fault;

/** Reads files that were named on the command line; whatever is wrong with one is told like any other fault. */
final class InputFile {

    /** Files beyond this are refused before they fill the memory; the readers have smaller caps of their own. */
    private static final long MOST_BYTES = 32L << 20;

    private InputFile() {}

    static byte[] bytes(Path path) {
        try {
            long size = Files.size(path);
            if (size > MOST_BYTES) {
                throw refused(
                        path,
                        "too-large",
                        size + " bytes",
                        "at most " + MOST_BYTES + " bytes",
                        "The file is too large to be a job or a plan; is it the right one?");
            }
            return Files.readAllBytes(path);
        } catch (NoSuchFileException e) {
            throw refused(
                    path,
                    "no-such-file",
                    path.toString(),
                    "a file that exists",
                    "There is no such file; check the name and the folder.");
        } catch (IOException e) {
            throw refused(
                    path,
                    "unreadable",
                    path.toString(),
                    "a file that can be read",
                    "The file cannot be read (" + e.getClass().getSimpleName()
                            + "); is it a folder, or are you not allowed to?");
        }
    }

    static String text(Path path) {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes(path)))
                    .toString();
        } catch (CharacterCodingException e) {
            throw refused(
                    path,
                    "not-utf-8",
                    "other bytes",
                    "UTF-8 text",
                    "The file is no UTF-8 text; save it as UTF-8 and try again.");
        }
    }

    private static RefusedException refused(Path path, String code, String got, String expected, String text) {
        return new RefusedException(path.toString(), List.of(new Fault("", code, got, expected, text)));
    }
}
