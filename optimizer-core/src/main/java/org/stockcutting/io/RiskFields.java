package org.stockcutting.io;

import static org.stockcutting.io.FieldType.BOOLEAN;
import static org.stockcutting.io.FieldType.DECIMAL;
import static org.stockcutting.io.FieldType.INTEGER;
import static org.stockcutting.io.FieldType.LENGTH;
import static org.stockcutting.io.FieldType.LIST;
import static org.stockcutting.io.FieldType.OBJECT;
import static org.stockcutting.io.FieldType.TEXT;

import org.stockcutting.plan.Status;

/** Every field of the document that says how many boards to take to be sure, in the order it is written. */
public final class RiskFields {

    /** Fields of the document. */
    public static final FieldTable RISK = FieldTable.of()
            .in("")
            .or("format", INTEGER, "1", "version of the document's form")
            .needs("job", TEXT, "name of the job")
            .needs("jobHash", TEXT, "hash of the job, as in its plan")
            .needsWord("planStatus", Words.of(Status.values(), Status::word), "how good the plan is")
            .needs("estimate", BOOLEAN, "true: all that follows rests on a model of the wood")
            .needs("seed", INTEGER, "seed of all trials")
            .needs("confidence", DECIMAL, "wanted chance to finish")
            .needs("reached", BOOLEAN, "false if no number of boards that was tried gives the wanted chance")
            .may("planCost", OBJECT, "the plan's cost; its proof stands in the plan")
            .may("extraCost", OBJECT, "price of the boards beyond the plan")
            .may("averageExtra", OBJECT, "the same on average, each purchase with no more than it turns out to need")
            .needs("chance", OBJECT, "chance to finish the whole job with what is to be taken")
            .needs("oneGoesBack", OBJECT, "chance that at least one of the boards is left over whole")
            .needs("groups", LIST, "parts that share wood and nothing with the rest of the job")
            .with(b -> amount(b, "/planCost"))
            .with(b -> amount(b, "/extraCost"))
            .with(b -> amount(b, "/averageExtra"))
            .with(b -> chance(b.in("/chance")))
            .with(b -> chance(b.in("/oneGoesBack")))
            .in("/groups/*")
            .needs("parts", LIST, "ids of the parts")
            .needs("planned", LIST, "what the plan buys for them")
            .needs("extraStock", TEXT, "id of the stock of which more are taken")
            .needs("takeMore", INTEGER, "boards to take beyond the plan")
            .needs("chances", LIST, "the chance for each number of boards, from the plan's on")
            .in("/groups/*/planned/*")
            .needs("stock", TEXT, "id of the stock")
            .needs("quantity", INTEGER, "boards that the plan needs")
            .needs("model", OBJECT, "what its boards are expected to be like")
            .in("/groups/*/planned/*/model")
            .needs("clearRun", LENGTH, "average clear length before a bad spot begins")
            .needs("zone", LENGTH, "average length of a bad spot")
            .needs("endCheck", LENGTH, "average length that is checked at each end")
            .needs("unusableBoards", DECIMAL, "share of boards of which nothing can be used")
            .needs("tightKnots", DECIMAL, "share of bad spots that are tight knots")
            .needs("blemishes", DECIMAL, "share of bad spots that are blemishes")
            .needs("origin", TEXT, "where these figures come from")
            .with(b -> chance(b.in("/groups/*/chances/*")
                    .needs("boards", INTEGER, "boards bought, all kinds together")
                    .needs("more", INTEGER, "how many of them are beyond the plan")))
            .build();

    private RiskFields() {}

    private static FieldTable.Builder amount(FieldTable.Builder t, String at) {
        return t.in(at).needs("amount", DECIMAL, "the sum").needs("currency", TEXT, "ISO 4217 code");
    }

    /** A chance with the interval that covers the true one in 95 of 100 simulations (Clopper, Pearson). */
    static FieldTable.Builder chance(FieldTable.Builder t) {
        return t.needs("finished", INTEGER, "trials that went well")
                .needs("trials", INTEGER, "all trials")
                .needs("share", DECIMAL, "finished over trials")
                .needs("low", DECIMAL, "lower end of the 95 % interval, rounded down")
                .needs("high", DECIMAL, "upper end, rounded up");
    }
}
