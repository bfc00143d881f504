package org.stockcutting.io;

import java.util.ArrayList;
import java.util.List;
import org.stockcutting.job.KeepRule;
import org.stockcutting.job.Kerf;
import org.stockcutting.job.Machines;
import org.stockcutting.job.SawLimits;
import org.stockcutting.job.ShopRules;
import org.stockcutting.length.Length;
import org.stockcutting.stock.Form;
import org.stockcutting.stock.Trim;

/** Reads the object {@code shop}. */
final class ShopReader {

    private ShopReader() {}

    static ShopRules read(DocObject shop) {
        DocObject kerf = shop.objectOrEmpty("kerf");
        return new ShopRules(
                new Kerf(Or.zero(kerf.length("crosscut")), Or.zero(kerf.length("rip"))),
                Or.of(TrimReader.read(shop, "boardTrim", false), Trim.NONE),
                Or.of(TrimReader.read(shop, "sheetTrim", true), Trim.NONE),
                limits(shop.objectOrEmpty("limits")),
                keepRules(shop),
                Or.zero(shop.length("thicknessTolerance")),
                Or.zero(shop.length("maxPlaning")),
                shop.length("carLength"),
                Length.ZERO,
                shop.length("stopReach"),
                Machines.UNKNOWN,
                null);
    }

    private static SawLimits limits(DocObject limits) {
        return new SawLimits(
                limits.length("ripCapacity"),
                limits.length("longestRip"),
                limits.length("crosscutCapacity"),
                limits.integer("stages"),
                Or.of(
                        limits.word("firstCut", SawLimits.FirstCut.values(), SawLimits.FirstCut::word),
                        SawLimits.FirstCut.ANY),
                limits.length("minimumPiece"));
    }

    private static List<KeepRule> keepRules(DocObject shop) {
        List<KeepRule> rules = new ArrayList<>();
        for (DocObject keep : shop.objects("keepOffcuts")) {
            rules.add(
                    keep == null
                            ? new KeepRule(Form.BOARD, Or.SIZE, Or.SIZE)
                            : new KeepRule(
                                    Or.of(keep.word("form", Form.values(), Form::word), Form.BOARD),
                                    Or.size(keep.length("length")),
                                    Or.zero(keep.length("width"))));
        }
        return rules;
    }
}
