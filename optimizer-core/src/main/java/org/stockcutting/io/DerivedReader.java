package org.stockcutting.io;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.stockcutting.job.FaultCode;
import org.stockcutting.job.Goal;
import org.stockcutting.job.Job;
import org.stockcutting.length.Length;
import org.stockcutting.length.LengthFormatException;
import org.stockcutting.length.Volume;
import org.stockcutting.material.NominalCatalog;
import org.stockcutting.material.NominalSize;
import org.stockcutting.part.Side;
import org.stockcutting.plan.BuyingLine;
import org.stockcutting.plan.Derived;
import org.stockcutting.plan.Estimate;
import org.stockcutting.plan.LongestOffcut;
import org.stockcutting.plan.NearMiss;
import org.stockcutting.plan.TradeOff;
import org.stockcutting.plan.Warning;
import org.stockcutting.plan.WholeSets;
import org.stockcutting.plan.YieldFigures;
import org.stockcutting.stock.Money;
import org.stockcutting.stock.StockItem;

/** Reads what a plan document says that follows from its layouts. */
final class DerivedReader {

    private final Job job;
    private final Reading reading;

    DerivedReader(Job job, Reading reading) {
        this.job = job;
        this.reading = reading;
    }

    Derived read(DocObject doc) {
        return new Derived(
                buyingList(doc),
                offcuts(doc),
                StepReader.steps(doc),
                Or.of(doc.integer("setUps"), 0),
                figures(doc.object("yield")),
                warnings(doc),
                longestOffcut(doc.object("longestOffcut")),
                nearMisses(doc),
                tradeOff(doc),
                estimates(doc),
                wholeSets(doc.object("wholeSets")));
    }

    private static @Nullable WholeSets wholeSets(@Nullable DocObject node) {
        if (node == null) {
            return null;
        }
        List<WholeSets.Lack> missing = new ArrayList<>();
        for (DocObject lack : node.objects("missing")) {
            if (lack != null) {
                missing.add(new WholeSets.Lack(Or.of(lack.text("part"), Or.NAME), Or.of(lack.integer("quantity"), 0)));
            }
        }
        return new WholeSets(Or.of(node.integer("complete"), 0), Or.of(node.integer("atMost"), 0), missing);
    }

    private static @Nullable LongestOffcut longestOffcut(@Nullable DocObject node) {
        if (node == null) {
            return null;
        }
        return new LongestOffcut(
                Or.zero(node.length("length")), Or.zero(node.length("atMost")), Or.of(node.bool("certified"), false));
    }

    private List<BuyingLine> buyingList(DocObject doc) {
        List<BuyingLine> lines = new ArrayList<>();
        for (DocObject node : doc.objects("buyingList")) {
            if (node != null) {
                int quantity = Or.of(node.integer("quantity"), 0);
                lines.add(new BuyingLine(
                        Or.of(node.text("stock"), Or.NAME),
                        quantity,
                        money(node, "price"),
                        money(node, "total"),
                        node.parsed("boardFeet", FaultCode.NOT_AN_AMOUNT, GoalText::decimal),
                        new BuyingLine.Lot(
                                Or.of(node.integer("used"), quantity),
                                Or.of(node.integer("pack"), 1),
                                Or.of(node.integer("breakFrom"), 0),
                                Or.of(node.integer("more"), 0))));
            }
        }
        return lines;
    }

    private @Nullable Money money(DocObject node, String name) {
        BigInteger minor = node.parsed(name, FaultCode.NOT_AN_AMOUNT, new GoalText(job, Goal.COST)::readMoney);
        if (minor == null) {
            return null;
        }
        int digits = job.writing().currency().getDefaultFractionDigits();
        return new Money(new BigDecimal(minor, digits), job.writing().currency());
    }

    /** Offcuts are entries on hand; a trade size means what it means in the job, else what the catalog says. */
    private List<StockItem.OnHand> offcuts(DocObject doc) {
        Map<String, NominalSize> sizes = new TreeMap<>();
        NominalCatalog standard = NominalCatalog.standard();
        standard.names().forEach(name -> standard.find(name).ifPresent(size -> sizes.put(name, size)));
        Stream.concat(job.forSale().stream(), job.onHand().stream()).forEach(item -> {
            NominalSize nominal = item.nominal();
            if (nominal != null) {
                sizes.put(nominal.name(), nominal);
            }
        });
        StockReader reader = new StockReader(
                reading,
                new NominalCatalog(sizes.values()),
                Or.NAME,
                job.writing().currency());
        List<StockItem.OnHand> offcuts = new ArrayList<>();
        for (DocObject node : doc.objects("offcuts")) {
            if (node != null) {
                offcuts.add(reader.onHand(node, offcuts.size()));
            }
        }
        return offcuts;
    }

    YieldFigures figures(@Nullable DocObject node) {
        BigDecimal ratio = node == null ? null : node.parsed("ratio", FaultCode.NOT_AN_AMOUNT, GoalText::decimal);
        return new YieldFigures(
                volume(node, "used"),
                volume(node, "parts"),
                volume(node, "allowance"),
                volume(node, "kerf"),
                volume(node, "trim"),
                volume(node, "zones"),
                volume(node, "offcutsKept"),
                volume(node, "waste"),
                Or.of(ratio, BigDecimal.ZERO));
    }

    private Volume volume(@Nullable DocObject node, String name) {
        Volume volume = node == null ? null : node.parsed(name, FaultCode.NOT_A_VOLUME, this::volume);
        return Or.of(volume, Volume.ZERO);
    }

    private @Nullable Volume volume(String text) {
        try {
            return reading.volumes().read(text);
        } catch (LengthFormatException e) {
            return null;
        }
    }

    private List<NearMiss> nearMisses(DocObject doc) {
        List<NearMiss> misses = new ArrayList<>();
        for (DocObject node : doc.objects("nearMisses")) {
            if (node != null) {
                misses.add(new NearMiss(
                        Or.of(node.text("part"), Or.NAME),
                        Or.of(node.word("side", Side.values(), Side::word), Side.LENGTH),
                        Or.of(node.length("by"), Length.ZERO),
                        Or.of(node.integer("places"), 0),
                        Or.of(node.integer("boards"), 0),
                        Or.of(node.integer("sheets"), 0),
                        money(node, "saves"),
                        Or.of(node.bool("smallest"), false)));
            }
        }
        return misses;
    }

    private TradeOff tradeOff(DocObject doc) {
        List<TradeOff.Row> rows = new ArrayList<>();
        for (DocObject node : doc.objects("tradeOff")) {
            if (node != null) {
                rows.add(new TradeOff.Row(
                        Or.of(
                                money(node, "cost"),
                                Money.ofMinor(0, job.writing().currency())),
                        Or.of(node.integer("setUps"), 0),
                        Or.of(node.bool("chosen"), false)));
            }
        }
        return new TradeOff(rows);
    }

    List<Estimate> estimates(DocObject doc) {
        List<Estimate> estimates = new ArrayList<>();
        for (DocObject node : doc.objects("estimates")) {
            if (node != null) {
                estimates.add(new Estimate(
                        Or.of(node.text("stock"), Or.NAME),
                        served(node),
                        volume(node, "net"),
                        decimal(node, "yield"),
                        volume(node, "volume"),
                        decimal(node, "boardFeet"),
                        Or.of(node.integer("boards"), 0),
                        money(node, "cost"),
                        sure(node.objectOrEmpty("sure")),
                        atLeast(node),
                        Or.of(node.integer("trials"), 0),
                        Or.of(node.text("wood"), Or.NAME)));
            }
        }
        return estimates;
    }

    private static List<Estimate.Served> served(DocObject estimate) {
        List<Estimate.Served> served = new ArrayList<>();
        for (DocObject node : estimate.objects("parts")) {
            if (node != null) {
                served.add(new Estimate.Served(Or.of(node.text("part"), Or.NAME), Or.of(node.integer("quantity"), 0)));
            }
        }
        return served;
    }

    private Estimate.Sure sure(DocObject node) {
        return new Estimate.Sure(
                decimal(node, "chance"),
                decimal(node, "boardFeet"),
                Or.of(node.integer("boards"), 0),
                money(node, "cost"));
    }

    private static List<Estimate.AtLeast> atLeast(DocObject estimate) {
        List<Estimate.AtLeast> rows = new ArrayList<>();
        for (DocObject node : estimate.objects("atLeast")) {
            if (node != null) {
                rows.add(new Estimate.AtLeast(
                        Or.of(node.integer("boards"), 0),
                        Or.zero(node.length("width")),
                        Or.zero(node.length("length"))));
            }
        }
        return rows;
    }

    private static BigDecimal decimal(DocObject node, String name) {
        return Or.of(node.parsed(name, FaultCode.NOT_AN_AMOUNT, GoalText::decimal), BigDecimal.ZERO);
    }

    private static List<Warning> warnings(DocObject doc) {
        List<Warning> warnings = new ArrayList<>();
        for (DocObject node : doc.objects("warnings")) {
            if (node != null) {
                warnings.add(new Warning(
                        Or.of(node.text("code"), Or.NAME),
                        Or.of(node.text("pointer"), Or.NAME),
                        Or.of(node.text("text"), Or.NAME)));
            }
        }
        return warnings;
    }
}
