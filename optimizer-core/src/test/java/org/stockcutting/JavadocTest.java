package org.stockcutting;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.DocTrees;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePath;
import com.sun.source.util.TreePathScanner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.lang.model.element.Modifier;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;

/** What a user of the library sees is described: every public type, every public method that is more than an accessor, every room. */
class JavadocTest {

    private static final Path SOURCES = Path.of("src", "main", "java");

    private static List<Path> sources() throws IOException {
        try (Stream<Path> files = Files.walk(SOURCES)) {
            return files.filter(file -> file.toString().endsWith(".java"))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void everyPublicTypeAndMethodIsDescribed() throws IOException {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
            JavacTask task = (JavacTask)
                    compiler.getTask(null, files, null, null, null, files.getJavaFileObjectsFromPaths(sources()));
            Iterable<? extends CompilationUnitTree> units = task.parse();
            Finder finder = new Finder(DocTrees.instance(task));
            units.forEach(unit -> finder.scan(unit, null));
            assertThat(finder.seen).isGreaterThan(100);
            assertThat(finder.bare).isEmpty();
        }
    }

    @Test
    void everyPackageSaysWhatItIs() throws IOException {
        Set<Path> folders = new TreeSet<>();
        sources().forEach(file -> folders.add(file.getParent()));
        for (Path folder : folders) {
            Path info = folder.resolve("package-info.java");
            assertThat(info).exists();
            assertThat(Files.readString(info)).startsWith("/**").contains("@NullMarked");
        }
    }

    /** Walks types and methods that are public all the way down from their file. */
    private static final class Finder extends TreePathScanner<Void, Void> {

        private final DocTrees docs;
        private final List<String> bare = new ArrayList<>();
        private int seen;

        Finder(DocTrees docs) {
            this.docs = docs;
        }

        @Override
        public Void visitClass(ClassTree type, Void nothing) {
            if (isSeen(type)) {
                look(type.getSimpleName().toString());
                super.visitClass(type, nothing);
            }
            return null;
        }

        @Override
        public Void visitMethod(MethodTree method, Void nothing) {
            ClassTree type = (ClassTree) getCurrentPath().getParentPath().getLeaf();
            boolean open =
                    method.getModifiers().getFlags().contains(Modifier.PUBLIC) || type.getKind() == Tree.Kind.INTERFACE;
            boolean inherited = method.getModifiers().getAnnotations().stream()
                    .anyMatch(a -> a.getAnnotationType().toString().equals("Override"));
            if (open && !inherited && !isTrivial(method, type)) {
                look(type.getSimpleName() + "." + method.getName());
            }
            return null;
        }

        private boolean isSeen(ClassTree type) {
            Tree parent = getCurrentPath().getParentPath().getLeaf();
            boolean member = parent instanceof ClassTree outer && outer.getKind() == Tree.Kind.INTERFACE;
            return member || type.getModifiers().getFlags().contains(Modifier.PUBLIC);
        }

        /** One statement, a constructor, or a question without arguments: the name and the type's Javadoc say it. */
        private static boolean isTrivial(MethodTree method, ClassTree type) {
            boolean constructor = method.getName().contentEquals("<init>");
            boolean accessor = method.getParameters().isEmpty();
            boolean one = method.getBody() == null
                    ? type.getMembers().size() == 1
                    : method.getBody().getStatements().size() <= 1;
            boolean builder = method.getReturnType() != null
                    && method.getReturnType()
                            .toString()
                            .equals(type.getSimpleName().toString());
            return constructor || (accessor && (one || method.getBody() == null)) || one || builder;
        }

        private void look(String name) {
            seen++;
            TreePath path = getCurrentPath();
            String text = docs.getDocComment(path);
            if (text == null || text.isBlank()) {
                bare.add(name);
            }
        }
    }
}
