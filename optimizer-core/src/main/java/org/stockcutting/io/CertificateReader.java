package org.stockcutting.io;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.fraction.BigFraction;
import org.stockcutting.job.FaultCode;
import org.stockcutting.plan.Certificate;

/** Reads the certificate of a plan. */
final class CertificateReader {

    private final GoalText goal;
    private final Faults faults;

    CertificateReader(GoalText goal, Faults faults) {
        this.goal = goal;
        this.faults = faults;
    }

    Certificate read(DocObject doc) {
        DocObject node = doc.object("certificate");
        if (node == null) {
            return Certificate.EMPTY;
        }
        List<Certificate.Component> components = new ArrayList<>();
        for (DocObject component : node.objects("components")) {
            if (component != null) {
                BigInteger bound = component.parsed("bound", FaultCode.NOT_AN_AMOUNT, goal::read);
                components.add(new Certificate.Component(
                        component.texts("stock"),
                        duals(component, "duals", component.list("duals")),
                        rows(component),
                        Or.of(bound, BigInteger.ZERO)));
            }
        }
        return new Certificate(components);
    }

    private List<List<Certificate.Dual>> rows(DocObject component) {
        List<List<Certificate.Dual>> rows = new ArrayList<>();
        List<JsonNode> lists = component.list("rows");
        for (int i = 0; i < lists.size(); i++) {
            JsonNode list = lists.get(i);
            if (list.isArray()) {
                List<JsonNode> pairs = new ArrayList<>();
                list.forEach(pairs::add);
                rows.add(duals(component, "rows/" + i, pairs));
            } else {
                component.fault("rows/" + i, FaultCode.WRONG_TYPE, list, "a list of lists [part, value]");
            }
        }
        return rows;
    }

    private List<Certificate.Dual> duals(DocObject component, String pointer, List<JsonNode> pairs) {
        List<Certificate.Dual> duals = new ArrayList<>();
        for (int i = 0; i < pairs.size(); i++) {
            JsonNode pair = pairs.get(i);
            boolean shaped = pair.isArray()
                    && pair.size() == 2
                    && pair.get(0).isTextual()
                    && pair.get(1).isTextual();
            if (!shaped) {
                component.fault(pointer + "/" + i, FaultCode.WRONG_TYPE, pair, "a list [part, value] of two texts");
                continue;
            }
            String part = pair.get(0).textValue();
            BigFraction value = goal.readDual(part, pair.get(1).textValue());
            if (value == null) {
                component.fault(
                        pointer + "/" + i + "/1", FaultCode.NOT_A_FRACTION, pair.get(1), FieldType.FRACTION.wanted());
            } else {
                duals.add(new Certificate.Dual(part, value));
            }
        }
        return duals;
    }
}
