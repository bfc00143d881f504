package org.stockcutting.http.cli;

import org.jspecify.annotations.Nullable;
import org.stockcutting.http.Planner;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** The program itself; all work is in its commands. */
@Command(
        name = "optimizer",
        mixinStandardHelpOptions = true,
        version = "1.0.0",
        description = "Turns a woodworker's parts list into a buying list and a cutting plan.",
        footer = {
            "",
            "Exit status: 0 done, 1 parts left unplaced or violations found, 2 input refused, 3 internal fault."
        })
final class RootCommand implements Runnable {

    @Spec
    private @Nullable CommandSpec spec;

    @Option(
            names = "--trace",
            scope = ScopeType.INHERIT,
            description = "On an internal fault print where in the program it happened.")
    private boolean trace;

    @Override
    public void run() {
        if (spec != null) {
            throw new ParameterException(
                    spec.commandLine(),
                    "A command is missing: plan, compare, replan, enough, sure, check, review or serve.");
        }
    }

    /** The program with its commands, faults led to the exit status. */
    static CommandLine commandLine(Planner planner) {
        RootCommand root = new RootCommand();
        CommandLine commandLine = new CommandLine(root)
                .addSubcommand(new PlanCommand(planner))
                .addSubcommand(new CompareCommand(planner))
                .addSubcommand(new ReplanCommand())
                .addSubcommand(new EnoughCommand())
                .addSubcommand(new SureCommand(planner))
                .addSubcommand(new GradesCommand())
                .addSubcommand(new CheckCommand())
                .addSubcommand(new ReviewCommand())
                .addSubcommand(new ServeCommand(planner));
        commandLine.setUsageHelpWidth(100);
        commandLine.setParameterExceptionHandler((e, args) -> usage(e));
        commandLine.setExecutionExceptionHandler((e, command, result) -> root.fault(e, command));
        return commandLine;
    }

    private static int usage(ParameterException e) {
        CommandLine command = e.getCommandLine();
        command.getErr().println(e.getMessage());
        command.getErr().println("Try '" + command.getCommandSpec().qualifiedName() + " --help'.");
        command.getErr().flush();
        return ExitStatus.REFUSED;
    }

    private int fault(Exception e, CommandLine command) {
        if (e instanceof RefusedException refused) {
            command.getErr().print(FaultText.print(refused.source(), refused.faults()));
            command.getErr().flush();
            return ExitStatus.REFUSED;
        }
        String text = String.valueOf(e.getMessage()).replaceAll("\\p{Cntrl}+", " ");
        command.getErr()
                .println("internal fault: " + e.getClass().getSimpleName() + ": " + text
                        + (trace ? "" : " (--trace shows where)"));
        if (trace) {
            e.printStackTrace(command.getErr());
        }
        command.getErr().flush();
        return ExitStatus.INTERNAL;
    }
}
