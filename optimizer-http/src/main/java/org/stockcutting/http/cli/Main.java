package org.stockcutting.http.cli;

import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import org.stockcutting.Optimizer;
import org.stockcutting.http.Planner;
import picocli.CommandLine;

/** Starts the program. */
public final class Main {

    private Main() {}

    public static void main(String[] args) {
        System.setProperty("java.awt.headless", "true");
        CommandLine commandLine = RootCommand.commandLine(Planner.of(new Optimizer()));
        commandLine.setOut(new PrintWriter(new OutputStreamWriter(System.out, StandardCharsets.UTF_8)));
        commandLine.setErr(new PrintWriter(new OutputStreamWriter(System.err, StandardCharsets.UTF_8)));
        int status = commandLine.execute(args);
        commandLine.getOut().flush();
        commandLine.getErr().flush();
        System.exit(status);
    }
}
