package org.stockcutting.io;

import static org.stockcutting.io.FieldType.BOOLEAN;
import static org.stockcutting.io.FieldType.DECIMAL;
import static org.stockcutting.io.FieldType.INTEGER;
import static org.stockcutting.io.FieldType.LIST;
import static org.stockcutting.io.FieldType.OBJECT;
import static org.stockcutting.io.FieldType.TEXT;

/** Every field of the document that sets grades side by side, in the order it is written. */
public final class GradesFields {

    /** Fields of the document. */
    public static final FieldTable GRADES = FieldTable.of()
            .in("")
            .or("format", INTEGER, "1", "version of the document's form")
            .needs("job", TEXT, "name of the job")
            .needs("jobHash", TEXT, "hash of the job")
            .needs("estimate", BOOLEAN, "true: all that follows rests on models of the wood")
            .needs("seed", INTEGER, "seed of all trials")
            .needs("confidence", DECIMAL, "wanted chance to finish")
            .needs("currency", TEXT, "ISO 4217 code of every amount")
            .needs("families", LIST, "parts that share wood and could come from several grades")
            .may("together", OBJECT, "the whole job, each family from its cheapest mix")
            .in("/families/*")
            .needs("parts", LIST, "ids of the parts")
            .needs("mixes", LIST, "each grade alone by its name, then mixes")
            .may("best", INTEGER, "index of the cheapest mix that reaches the wanted chance")
            .with(b -> mix(b, "/families/*/mixes/*"))
            .with(b -> mix(b, "/together"))
            .build();

    private GradesFields() {}

    private static FieldTable.Builder mix(FieldTable.Builder t, String at) {
        FieldTable.Builder figures = t.in(at)
                .needs("grades", LIST, "where each part that has a choice comes from")
                .may("planned", DECIMAL, "cost of the plan, for wood without knots")
                .may("expected", DECIMAL, "cost on average, each purchase with no more than it turns out to need")
                .may("cost", DECIMAL, "cost with enough boards to be sure")
                .needs("boards", INTEGER, "boards to buy to be sure; 0 where the plan leaves parts out")
                .may("chance", OBJECT, "chance to finish with them; absent where the plan leaves parts out")
                .in(at + "/grades/*")
                .needs("part", TEXT, "id of the part")
                .needs("grade", TEXT, "its grade; in a mix also what is left of the dearer one")
                .in(at + "/chance");
        return RiskFields.chance(figures);
    }
}
