package org.stockcutting.solve.guillotine;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stockcutting.solve.instance.Answer;
import org.stockcutting.solve.instance.Engine;
import org.stockcutting.solve.instance.Instance;
import org.stockcutting.solve.instance.WorkMeter;

/**
 * Search and bound by turns: a short search ends most jobs, strips by column generation give what is still open a better start, dives
 * do so on a rack of boards with zones, the bound tells the search when to stop and whether it is worth going on, and dives go for what
 * it does not rule out, with most of the work where some pieces are alike. Where hardly two are, there are hardly any strips, and search
 * and dives take turns at equal shares, since dives begin with what search has found.
 *
 * <p>While the search goes on, the bound takes at most a third of what the meter still allows, half of it where that should finish it, and
 * nothing where that is too little to get anywhere, or where the first turn left the bound far below the plan, as it does on boards whose
 * zones are left out of it. On a rack it waits for the dives, up to half of the work.
 */
final class Turns {

    private static final long FIRST_SEARCH = 150_000;
    private static final long FIRST_BOUND = 450_000;
    private static final long LEAST_BOUND = 150_000;
    private static final long SECOND_SEARCH = 600_000;
    private static final long RACK_SEARCH = 50_000;
    private static final long FIRST_RACK = 600_000;
    /** One part in so many of the work is for strips where dives do more. */
    private static final int FEW_STRIPS = 10;
    /** How much longer than the search dives take, where some pieces are alike. */
    private static final int DIVES = 3;
    /** One part in so many of the work is for worths of a rack, which only its certificate needs. */
    private static final int WORTHS = 10;
    /** How much longer the search goes on without gain where a finished bound says that less may be possible. */
    private static final long HOPE = 4;

    private final Yard yard;
    private final AreaBound area;
    private final Answers answers;
    private final TreeSearch search;
    private final List<StripSearch> strips;
    private final @Nullable RackSearch rack;
    private final Engine.EngineListener listener;
    private @Nullable ScaleBound scales;
    private final long seed;
    /** True if hardly two pieces are alike. */
    private final boolean unlike;

    private @Nullable ColumnBound columns;
    private @Nullable PurchaseRows purchases;
    private @Nullable PurchaseBound whole;
    private @Nullable Descent dive;
    private @Nullable RackBound worths;

    Turns(Yard yard, AreaBound area, Draft start, long seed, Engine.EngineListener listener) {
        this.yard = yard;
        this.area = area;
        this.answers = new Answers(area);
        this.listener = listener;
        this.seed = seed;
        this.unlike = !yard.model.hasRepeats();
        this.search = new TreeSearch(yard, area, start, seed);
        this.strips = StripSearch.of(yard, area, seed);
        this.rack = RackSearch.suits(yard) ? new RackSearch(yard, search.price(), seed) : null;
        improved(start);
    }

    private void improved(Draft best) {
        listener.improved(answers.interim(best), best.cost());
    }

    /** Takes over the patterns of another search of the same boards and pieces, as far as they may be cut here, and its bound. */
    void learn(Turns other) {
        if (rack != null && other.rack != null) {
            rack.learn(other.rack);
        }
        // It holds whatever limits plans, and is there only where all that has a place is placed, as then it is here.
        if (other.columns != null) {
            columns = other.columns;
            answers.use(columns);
            search.raise(columns.raised());
        }
    }

    Draft best() {
        return search.best();
    }

    /** Goes on from the plan of another search of the same boards and pieces, if that is better. */
    void take(Turns other) {
        Draft draft = other.best().on(yard);
        if (draft.isBetterThan(search.best())) {
            search.take(draft);
            improved(draft);
        }
    }

    /** True if no plan can be better. */
    boolean isProved() {
        return search.isProved();
    }

    /** What was found so far, with bounds. */
    Answer answer(boolean placementProved) {
        return answers.last(search.best(), placementProved);
    }

    void run(WorkMeter meter) {
        long patience = patience(yard.model.instance);
        long searchSteps = rack == null ? FIRST_SEARCH : RACK_SEARCH;
        long boundSteps = FIRST_BOUND;
        long rackSteps = FIRST_RACK;
        quickBound(meter);
        while (true) {
            WorkMeter part = meter.part(searchSteps);
            search.run(part, isHopeful() ? HOPE * patience : patience, this::improved);
            meter.absorb(part);
            if (searchSteps == FIRST_SEARCH && areStripsOfUse() && !search.isProved() && !meter.isExhausted()) {
                strips(meter);
            }
            rack(meter, rackSteps);
            boolean tired = search.idle() >= (isHopeful() ? HOPE * patience : patience);
            if (search.isProved() || meter.isExhausted() || (tired && isBoundDone() && isDiveDone() && isRackDone())) {
                break;
            }
            bound(meter, boundSteps, tired);
            long before = meter.used();
            if (searchSteps > FIRST_SEARCH || unlike) {
                dives(meter, unlike ? SECOND_SEARCH : DIVES * searchSteps);
            }
            if (isRackDone()) {
                searchSteps = unlike ? Math.max(SECOND_SEARCH, meter.used() - before) : SECOND_SEARCH;
                boundSteps = purchases == null ? searchSteps : DIVES * searchSteps;
            }
            rackSteps *= 2;
        }
    }

    /** Where no two pieces are alike, any stages go and all boards are of one size, search alone gets further. */
    private boolean areStripsOfUse() {
        return isStripsAll() || !unlike || yard.model.stocks > 1;
    }

    /** Work for strips: most of what is left where they are all there is, else a part of it. */
    private long stepsOfStrips(long left) {
        if (isStripsAll()) {
            return left / 5 * 4;
        }
        if (unlike) {
            return left / 8;
        }
        return left / (Dive.suits(yard.model) ? FEW_STRIPS : 3);
    }

    private boolean isStripsAll() {
        return yard.model.instance.limits().stages() <= 3;
    }

    /** Boards in strips: all there is where the shop cuts in two or three stages, else a start from which the search goes on. */
    private void strips(WorkMeter meter) {
        for (StripSearch strip : strips) {
            WorkMeter part = meter.head(stepsOfStrips(meter.left()));
            strip.run(search.best(), search.least(), part);
            meter.absorb(part);
            if (strip.best().isBetterThan(search.best())) {
                search.take(strip.best());
                improved(search.best());
            }
            search.raise(strip.bound());
            answers.use(strip.bound());
        }
    }

    /** Moves without gain after which the search ends: few for small jobs, more than any usual meter allows for large ones. */
    private static long patience(Instance instance) {
        long pieces = instance.items().stream().mapToLong(i -> i.demand()).sum();
        return 500 + 15 * Math.min(pieces, 100_000) * Math.min(pieces, 100_000);
    }

    private boolean isHopeful() {
        return columns != null && columns.isFinished();
    }

    /** True if more work on the bound would not help. */
    private boolean isBoundDone() {
        return columns != null
                ? columns.isFinished() && (whole == null || whole.isFinished())
                : yard.model.paysOffcuts || !search.isComplete();
    }

    /** By scales alone, which costs next to nothing; it may end the search before it has begun. */
    private void quickBound(WorkMeter meter) {
        if (search.isComplete() && !search.isProved()) {
            if (PurchaseRows.suits(yard.model, search.best().cost())) {
                purchases = new PurchaseRows(yard.model, Answers.placed(search.best()));
                answers.use(purchases);
                search.use(purchases);
            }
            scales = new ScaleBound(yard.model, Answers.placed(search.best()));
            scales.run(area.costUnit(), meter);
            answers.use(scales);
            search.raise(scales.bound());
        }
    }

    /** True if diving again would hardly help. */
    private boolean isDiveDone() {
        return columns == null
                || !Dive.suits(yard.model)
                || (unlike && !UnlikeDive.suits(yard))
                || (dive != null
                        && (dive.dives() >= mostDives()
                                || (purchases == null && dive.isHopeless(search.aim(dive.dives())))));
    }

    /** As for patience: few for small jobs. */
    private long mostDives() {
        long pieces =
                yard.model.instance.items().stream().mapToLong(i -> i.demand()).sum();
        return 2 + (purchases == null ? pieces : 3 * pieces);
    }

    /** As many as take so many steps. */
    private void dives(WorkMeter meter, long steps) {
        long until = meter.used() + steps;
        do {
            dive(meter);
        } while (meter.used() < until && !meter.isExhausted() && !isDiveDone() && !search.isProved());
    }

    /** Where the bound says that less may be possible. */
    private void dive(WorkMeter meter) {
        if (columns == null || isDiveDone() || !search.isComplete() || search.isProved()) {
            return;
        }
        if (dive == null) {
            dive = unlike
                    ? new UnlikeDive(yard, search.pool(), search.price(), seed)
                    : new Dive(yard, columns, search.price(), seed);
        }
        // Where hardly two pieces are alike half of what is left: the next one has all patterns of a dive that was cut
        // short.
        WorkMeter part = meter.part(unlike ? meter.left() / 2 : meter.left());
        Draft found = dive.run(part, search.aim(dive.dives()));
        meter.absorb(part);
        if (found != null) {
            search.take(found);
            improved(found);
        }
    }

    /** On a rack of boards with zones dives find more than the search does, so they get more of the work. */
    private void rack(WorkMeter meter, long steps) {
        if (rack == null) {
            return;
        }
        if (worths == null && search.isComplete() && !search.isProved()) {
            worths = new RackBound(yard, search.best());
            WorkMeter few = meter.part(meter.left() / WORTHS);
            worths.run(seed, few);
            meter.absorb(few);
            answers.use(worths);
        }
        WorkMeter part = meter.part(steps);
        rack.learn(search.best());
        while (!isRackDone() && !search.isProved() && part.spend(0)) {
            Draft best = search.best();
            Draft found =
                    search.isComplete() ? rack.run(part, search.goal()) : rack.runShort(part, best.missingWeight());
            if (found != null) {
                search.take(found);
                improved(found);
            }
        }
        meter.absorb(part);
    }

    private boolean isRackDone() {
        return rack == null
                || !(search.isComplete() || RackAim.isAllOnHand(yard.model))
                || rack.isHopeless()
                || rack.dives() >= mostRackDives(yard.model.instance);
    }

    private static long mostRackDives(Instance instance) {
        long pieces = instance.items().stream().mapToLong(i -> i.demand()).sum();
        return 2 + Math.min(pieces, 100_000) * Math.min(pieces, 100_000) / 1_000;
    }

    private boolean isFarOff() {
        return columns != null && columns.raised() < search.best().cost() / 2;
    }

    /** @param alone true if the search has ended, so that the bound may take all that is left */
    private void bound(WorkMeter meter, long steps, boolean alone) {
        boolean nearlyDone = columns != null && columns.stepsToGo() <= meter.left() / 2;
        long share = nearlyDone ? meter.left() / 2 : Math.min(steps, alone ? meter.left() : meter.left() / 3);
        boolean early = !isRackDone() && meter.left() > meter.used();
        if (isBoundDone() || early || (!alone && (share < LEAST_BOUND || isFarOff()))) {
            return;
        }
        Draft best = search.best();
        if (columns == null) {
            int[] placed = Answers.placed(best);
            columns = new ColumnBound(yard.model, placed, answers.firstDuals(best), area.costUnit());
            answers.use(columns);
        }
        columns.learn(best);
        WorkMeter part = meter.part(share);
        columns.run(part, best.cost());
        search.raise(columns.raised());
        if (purchases != null) {
            columns.tell(purchases);
            if (columns.isFinished() && !search.isProved()) {
                whole = whole == null ? new PurchaseBound(yard.model, Answers.placed(best), columns, purchases) : whole;
                whole.run(part, best.cost());
            }
            search.raise(purchases.bound(best.cost()));
        }
        meter.absorb(part);
    }
}
