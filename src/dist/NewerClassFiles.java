import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.classfile.ClassFile;
import java.lang.classfile.ClassFile.ClassHierarchyResolverOption;
import java.lang.classfile.ClassFile.StackMapsOption;
import java.lang.classfile.ClassHierarchyResolver;
import java.lang.classfile.ClassModel;
import java.lang.classfile.ClassTransform;
import java.lang.classfile.CodeTransform;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Gives classes that were compiled for Java 5 the stack maps that Java 6 and later ask for. Without them a class
 * is checked the slow way at each start and stays out of the archive.
 *
 * <p>java NewerClassFiles.java JAR; runs on Java 24 or later.
 */
public final class NewerClassFiles {
  private static final int FIRST_WITH_STACK_MAPS = ClassFile.JAVA_6_VERSION;

  private NewerClassFiles() {}

  public static void main(String[] args) throws IOException {
    try (FileSystem jar = FileSystems.newFileSystem(Path.of(args[0]));
        Stream<Path> files = Files.walk(jar.getPath("/"))) {
      ClassFile classFile =
          ClassFile.of(
              ClassHierarchyResolverOption.of(classesOf(jar)), StackMapsOption.GENERATE_STACK_MAPS);
      ClassTransform newer =
          ClassTransform.transformingMethodBodies(CodeTransform.ACCEPT_ALL)
              .andThen(
                  ClassTransform.endHandler(to -> to.withVersion(ClassFile.JAVA_17_VERSION, 0)));
      List<Path> classes = files.filter(file -> file.toString().endsWith(".class")).toList();
      for (Path file : classes) {
        ClassModel model = classFile.parse(Files.readAllBytes(file));
        if (model.majorVersion() < FIRST_WITH_STACK_MAPS) {
          Files.write(file, classFile.transformClass(model, newer));
        }
      }
    }
  }

  /** What extends what, among the classes of a jar and those of Java. */
  private static ClassHierarchyResolver classesOf(FileSystem jar) {
    return ClassHierarchyResolver.ofResourceParsing(
            described -> {
              Path file =
                  jar.getPath(described.descriptorString().replaceAll("^L|;$", "") + ".class");
              try {
                return Files.exists(file) ? Files.newInputStream(file) : null;
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
            })
        .orElse(ClassHierarchyResolver.defaultResolver())
        .cached();
  }
}
