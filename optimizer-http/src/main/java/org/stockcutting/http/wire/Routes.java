package org.stockcutting.http.wire;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HandlerType;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.stockcutting.http.Planner;

/** Every address of the service, in one table: what it takes is registered from it, and so is what 405 allows. */
final class Routes {

    static final String CHECKS = "/v1/checks";
    static final String REPLANS = "/v1/replans";
    static final String PROBLEMS = "/problems/";

    private static final String JSON = "application/json";

    private final List<Route> table = new ArrayList<>();

    private record Route(HandlerType method, String path, Handler handler) {}

    Routes(Planner planner, SolveGate gate) {
        JobRoutes jobs = new JobRoutes(planner, gate);
        Examples examples = new Examples();
        post("/v1/plans", jobs::plan);
        post("/v1/buying-lists", jobs::buyingList);
        post("/v1/comparisons", jobs::compare);
        post("/v1/chances", jobs::chances);
        post("/v1/enough", jobs::enough);
        post("/v1/grades", jobs::grades);
        post(CHECKS, jobs::check);
        post(REPLANS, jobs::replan);
        post("/v1/reviews", jobs::review);
        get("/v1/examples", ctx -> answer(ctx, examples.document()));
        get(PROBLEMS + "{code}", Routes::explain);
        get("/livez", ctx -> answer(ctx, Json.bytes(Json.object().put("live", true))));
    }

    void register(RoutesConfig routes) {
        for (Route route : table) {
            routes.addHttpHandler(route.method(), route.path(), route.handler());
        }
    }

    /** Methods that an address takes, for the Allow header; empty where there is nothing. */
    String allowed(String path) {
        TreeSet<String> methods = new TreeSet<>();
        for (Route route : table) {
            boolean same = route.path().startsWith(PROBLEMS)
                    ? path.startsWith(PROBLEMS) && path.indexOf('/', PROBLEMS.length()) < 0
                    : route.path().equals(path);
            if (same) {
                methods.add(route.method().name());
                if (route.method() == HandlerType.GET) {
                    methods.add("HEAD");
                }
            }
        }
        return String.join(", ", methods);
    }

    private void post(String path, Handler handler) {
        table.add(new Route(HandlerType.POST, path, handler));
    }

    private void get(String path, Handler handler) {
        table.add(new Route(HandlerType.GET, path, handler));
    }

    private static void explain(Context ctx) {
        ProblemKind kind = ProblemKind.ofCode(ctx.pathParam("code"))
                .orElseThrow(() -> new ProblemException(ProblemKind.NOT_FOUND, "There is no problem of that code."));
        answer(
                ctx,
                Json.bytes(Json.object()
                        .put("code", kind.code())
                        .put("status", kind.status())
                        .put("title", kind.title())
                        .put("text", kind.text())));
    }

    private static void answer(Context ctx, byte[] json) {
        ctx.contentType(Accepted.choose(ctx.header("Accept"), List.of(JSON))).result(json);
    }
}
