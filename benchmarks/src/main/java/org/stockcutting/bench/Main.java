package org.stockcutting.bench;

import java.util.List;
import org.stockcutting.bench.firstcuts.FirstCutsCommand;
import org.stockcutting.bench.peers.PeersCommand;
import org.stockcutting.bench.quality.CompareResultsCommand;
import org.stockcutting.bench.quality.ReadmeCommand;
import org.stockcutting.bench.quality.YieldCommand;
import org.stockcutting.bench.setups.SetUpsCommand;
import org.stockcutting.bench.speed.SpeedCommand;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The command line of the benchmarks. */
@Command(
        name = "benchmarks",
        mixinStandardHelpOptions = true,
        synopsisSubcommandLabel = "COMMAND",
        description = "How good and how fast the library is, measured.")
public final class Main {

    /** Every subcommand. */
    static final List<Class<?>> COMMANDS = List.of(
            YieldCommand.class,
            PeersCommand.class,
            CompareResultsCommand.class,
            SetUpsCommand.class,
            FirstCutsCommand.class,
            SpeedCommand.class,
            ReadmeCommand.class);

    private Main() {}

    public static void main(String[] args) {
        System.exit(commandLine().execute(args));
    }

    static CommandLine commandLine() {
        CommandLine line = new CommandLine(new Main());
        COMMANDS.forEach(line::addSubcommand);
        return line;
    }
}
