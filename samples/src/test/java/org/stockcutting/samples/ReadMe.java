package org.stockcutting.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The tables of the read-me: the last cell of a job's row is made from its plan, and no job or program is left out. */
final class ReadMe {

    private static final Path FILE = Path.of("README.md");
    private static final Path PROGRAMS = Path.of("src", "main", "java", "org", "stockcutting", "samples");
    private static final Pattern ROW = Pattern.compile("(\\| \\[([^]]+)]\\(jobs/[^)]+\\) \\| [^|]+ \\| )([^|]*)( \\|)");

    private ReadMe() {}

    static void check(Collection<Answer> answers) throws IOException {
        String text = Files.readString(FILE);
        String wanted = filledIn(text, answers);
        if (Boolean.getBoolean("samples.write")) {
            Files.writeString(FILE, wanted);
        } else {
            assertThat(text).as("samples/README.md; %s", Expected.WAY_OUT).isEqualTo(wanted);
        }
        try (Stream<Path> files = Files.list(PROGRAMS)) {
            assertThat(files.map(file -> file.getFileName().toString()).filter(name -> !name.startsWith("package")))
                    .as("small programs in the read-me")
                    .allMatch(name -> text.contains("| [" + name.replace(".java", "") + "]("));
        }
    }

    private static String filledIn(String text, Collection<Answer> answers) {
        List<String> seen = new ArrayList<>();
        String filled = ROW.matcher(text).replaceAll(row -> {
            seen.add(row.group(2));
            String outcome = answers.stream()
                    .filter(answer -> answer.name().equals(row.group(2)))
                    .map(Answer::outcome)
                    .findFirst()
                    .orElse("no such sample");
            return Matcher.quoteReplacement(row.group(1) + outcome + row.group(4));
        });
        assertThat(seen)
                .as("rows of samples/README.md")
                .containsExactlyInAnyOrderElementsOf(
                        answers.stream().map(Answer::name).toList());
        return filled;
    }
}
