package org.stockcutting.http.cli;

import java.io.PrintWriter;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import org.stockcutting.http.Planner;
import org.stockcutting.http.wire.Service;
import org.stockcutting.http.wire.ServiceSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Runs the service until the process is ended. */
@Command(name = "serve", mixinStandardHelpOptions = true, description = "Answers plans over HTTP until it is ended.")
final class ServeCommand implements Callable<Integer> {

    private final Planner planner;

    @Spec
    private @Nullable CommandSpec spec;

    @Option(
            names = "--port",
            paramLabel = "N",
            defaultValue = "8080",
            description = "Port (default: ${DEFAULT-VALUE}).")
    private int port;

    @Option(
            names = "--host",
            paramLabel = "ADDRESS",
            defaultValue = "127.0.0.1",
            description = "Address to listen on (default: ${DEFAULT-VALUE}, this machine only).")
    private String host = "127.0.0.1";

    ServeCommand(Planner planner) {
        this.planner = planner;
    }

    @Override
    public Integer call() throws InterruptedException {
        CommandSpec own = Objects.requireNonNull(spec);
        if (port < 0 || port > 65_535) {
            throw new ParameterException(own.commandLine(), "--port takes 0 to 65535, got " + port);
        }
        Service service = Service.start(ServiceSettings.on(host, port), planner);
        CountDownLatch ended = new CountDownLatch(1);
        Runtime.getRuntime()
                .addShutdownHook(new Thread(
                        () -> {
                            service.close();
                            ended.countDown();
                        },
                        "end"));
        PrintWriter out = own.commandLine().getOut();
        out.println("Listening on http://" + host + ":" + service.port());
        out.flush();
        ended.await();
        return ExitStatus.DONE;
    }
}
