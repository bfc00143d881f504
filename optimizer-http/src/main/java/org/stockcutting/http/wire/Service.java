package org.stockcutting.http.wire;

import io.javalin.Javalin;
import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.util.Map;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.handler.EagerContentHandler;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.stockcutting.http.Planner;

/** The running service. */
public final class Service implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(Service.class);
    private static final String START = Service.class.getName() + ".start";
    private static final int THREADS = 64;

    private final Javalin javalin;

    private Service(Javalin javalin) {
        this.javalin = javalin;
    }

    /** Starts to listen. */
    public static Service start(ServiceSettings settings, Planner planner) {
        Routes routes = new Routes(planner, new SolveGate(settings.solves(), settings.queueMillis()));
        Javalin javalin = Javalin.create(config -> {
            http(config, settings);
            config.routes.before(Service::begin);
            config.routes.after(Service::end);
            routes.register(config.routes);
            config.routes.exception(ProblemException.class, (e, ctx) -> answer(ctx, e.problem()));
            config.routes.exception(HttpResponseException.class, (e, ctx) -> answer(ctx, refusal(e, ctx, routes)));
            config.routes.exception(Exception.class, (e, ctx) -> {
                LOG.error("{} {} failed", ctx.method(), ctx.path(), e);
                answer(ctx, Problem.of(ProblemKind.INTERNAL, "The service failed on this request."));
            });
        });
        return new Service(javalin.start(settings.host(), settings.port()));
    }

    /** The port it listens on. */
    public int port() {
        return javalin.port();
    }

    @Override
    public void close() {
        javalin.stop();
    }

    private static void http(JavalinConfig config, ServiceSettings settings) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.startup.startupWatcherEnabled = false;
        config.http.prefer405over404 = true;
        config.http.maxRequestSize = ServiceSettings.CHECK_BYTES + 1L;
        config.http.compressionStrategy = CompressionStrategy.NONE;
        config.jetty.threadPool = new QueuedThreadPool(THREADS, 4);
        config.jetty.modifyHttpConfiguration(http -> {
            http.setSendServerVersion(false);
            http.setSendDateHeader(true);
            http.setIdleTimeout(settings.idleMillis());
        });
        config.jetty.modifyServletContextHandler(context -> context.setErrorHandler(new ErrorPages()));
        config.jetty.modifyServer(server -> server(server, settings));
        config.jetty.addConnector((server, http) -> {
            ServerConnector connector =
                    new ServerConnector(server, 1, 1, new org.eclipse.jetty.server.HttpConnectionFactory(http));
            connector.setHost(settings.host());
            connector.setPort(settings.port());
            connector.setIdleTimeout(settings.idleMillis());
            return connector;
        });
    }

    private static void server(Server server, ServiceSettings settings) {
        server.setErrorHandler(new ErrorPages());
        server.addBean(new NetworkConnectionLimit(settings.connections(), server));
        server.setHandler(new BodyDeadline(
                settings.bodyMillis(), new EagerContentHandler(new BodyDeadline.Arrived(), new BodyLimits())));
    }

    private static void begin(Context ctx) {
        ctx.attribute(START, System.nanoTime());
        Headers.EVERY_ANSWER.forEach(ctx::header);
    }

    private static void end(Context ctx) {
        Long start = ctx.attribute(START);
        if (start != null) {
            ctx.header("Server-Timing", "total;dur=" + (System.nanoTime() - start) / 1_000_000L);
        }
    }

    private static Problem refusal(HttpResponseException e, Context ctx, Routes routes) {
        ProblemKind kind = ProblemKind.ofStatus(e.getStatus());
        if (kind == ProblemKind.METHOD_NOT_ALLOWED) {
            return Problem.of(kind, "Not this method at " + ctx.path() + ".").with("Allow", routes.allowed(ctx.path()));
        }
        return new Problem(kind, e.getStatus(), kind.text(), java.util.List.of(), Map.of());
    }

    private static void answer(Context ctx, Problem problem) {
        problem.headers().forEach(ctx::header);
        ctx.status(problem.status()).contentType(Problem.TYPE).result(problem.bytes());
    }
}
