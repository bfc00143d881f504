package org.stockcutting.http.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stockcutting.Optimizer;
import picocli.CommandLine;

class ReplanCommandTest {

    private static final String JOB =
            "{\"material\": \"pine\", \"parts\": [{\"id\": \"rail\", \"quantity\": 2, \"length\": 40, "
                    + "\"nominal\": \"2x4\"}], \"stock\": [{\"id\": \"2x4-8\", \"nominal\": \"2x4\", \"length\": 96, "
                    + "\"price\": {\"amount\": \"3.98\", \"per\": \"piece\"}}]}";

    @TempDir
    private Path folder;

    private record Run(int status, String out, String err) {}

    @Test
    void aMishapGoesFromPlanToNewPlanAndOn() throws Exception {
        Path job = Files.writeString(folder.resolve("job.json"), JOB);
        String plan = run("plan", job.toString(), "--json").out();
        Path planFile = Files.writeString(folder.resolve("plan.json"), plan);
        String hash = plan.replaceAll("(?s).*\"jobHash\": \"([^\"]+)\".*", "$1");
        Path log = Files.writeString(
                folder.resolve("log.json"),
                "{\"plan\": \"" + hash + "\", \"done\": [1, 2], \"spoiled\": [{\"part\": \"rail\", \"number\": 1}]}");
        Path out = folder.resolve("rest");

        Run first = run("replan", job.toString(), planFile.toString(), log.toString(), "--out", out.toString());
        assertThat(first.status()).as(first.err()).isEqualTo(ExitStatus.DONE);
        assertThat(first.out()).contains("Buy 1 x 2x4-8, 3.98 USD.").contains("Buying list");

        // What was written is job and plan of the next mishap.
        String next = Files.readString(out.resolve("plan.json")).replaceAll("(?s).*\"jobHash\": \"([^\"]+)\".*", "$1");
        Files.writeString(log, "{\"plan\": \"" + next + "\", \"done\": [1]}");
        Run last = run(
                "replan",
                out.resolve("job.json").toString(),
                out.resolve("plan.json").toString(),
                log.toString());
        assertThat(last.status()).as(last.err()).isEqualTo(ExitStatus.DONE);
        assertThat(last.out()).contains("Nothing is left to cut");
    }

    @Test
    void aWorklogOfAnotherPlanIsRefused() throws Exception {
        Path job = Files.writeString(folder.resolve("job.json"), JOB);
        Path plan = Files.writeString(
                folder.resolve("plan.json"),
                run("plan", job.toString(), "--json").out());
        Path log = Files.writeString(folder.resolve("log.json"), "{\"plan\": \"sha-256:0\"}");

        Run run = run("replan", job.toString(), plan.toString(), log.toString());
        assertThat(run.status()).isEqualTo(ExitStatus.REFUSED);
        assertThat(run.err()).contains("/plan").contains("another plan");
        assertThat(run("replan", job.toString(), plan.toString()).status()).isEqualTo(ExitStatus.REFUSED);
    }

    private static Run run(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        CommandLine commandLine = RootCommand.commandLine(new Optimizer()::plan);
        commandLine.setOut(new PrintWriter(out));
        commandLine.setErr(new PrintWriter(err));
        int status = commandLine.execute(args);
        return new Run(status, out.toString(), err.toString());
    }
}
