import java.io.IOException;
import java.lang.classfile.Attributes;
import java.lang.classfile.ClassFile;
import java.lang.classfile.ClassModel;
import java.lang.classfile.ClassTransform;
import java.lang.classfile.CodeBuilder;
import java.lang.classfile.Label;
import java.lang.classfile.MethodModel;
import java.lang.classfile.attribute.RecordAttribute;
import java.lang.classfile.attribute.RecordComponentInfo;
import java.lang.classfile.instruction.InvokeDynamicInstruction;
import java.lang.constant.ClassDesc;
import java.lang.constant.ConstantDescs;
import java.lang.constant.MethodTypeDesc;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Spells out what equals and hashCode of records do. As compiled, Java puts them together from method handles when a
 * record is first compared, a millisecond for each kind of record, which no archive keeps.
 *
 * <p>java PlainRecords.java JAR FOLDER_IN_JAR; runs on Java 24 or later.
 */
public final class PlainRecords {
  private static final ClassDesc OBJECTS = ClassDesc.of("java.util.Objects");
  private static final int PUBLIC = ClassFile.ACC_PUBLIC | ClassFile.ACC_FINAL;
  private static final MethodTypeDesc HASH_CODE = MethodTypeDesc.of(ConstantDescs.CD_int);
  private static final MethodTypeDesc EQUALS =
      MethodTypeDesc.of(ConstantDescs.CD_boolean, ConstantDescs.CD_Object);
  private static final MethodTypeDesc HASH_OF_ANY = MethodTypeDesc.of(ConstantDescs.CD_int, ConstantDescs.CD_Object);
  private static final MethodTypeDesc ANY_EQUAL =
      MethodTypeDesc.of(ConstantDescs.CD_boolean, ConstantDescs.CD_Object, ConstantDescs.CD_Object);

  private PlainRecords() {}

  public static void main(String[] args) throws IOException {
    ClassFile classFile = ClassFile.of();
    try (FileSystem jar = FileSystems.newFileSystem(Path.of(args[0]));
        Stream<Path> files = Files.walk(jar.getPath(args[1]))) {
      List<Path> classes = files.filter(file -> file.toString().endsWith(".class")).toList();
      for (Path file : classes) {
        ClassModel model = classFile.parse(Files.readAllBytes(file));
        Optional<RecordAttribute> header = model.findAttribute(Attributes.record());
        if (header.isPresent()) {
          Files.write(file, classFile.transformClass(model, spelledOut(model, header.get())));
        }
      }
    }
  }

  private static ClassTransform spelledOut(ClassModel type, RecordAttribute header) {
    ClassDesc self = type.thisClass().asSymbol();
    return (to, element) -> {
      if (element instanceof MethodModel method && isLeftToJava(method)) {
        switch (method.methodName().stringValue()) {
          case "hashCode" -> to.withMethodBody("hashCode", HASH_CODE, PUBLIC, code -> hash(code, self, header));
          case "equals" -> to.withMethodBody("equals", EQUALS, PUBLIC, code -> same(code, self, header));
          default -> to.with(element);
        }
      } else {
        to.with(element);
      }
    };
  }

  private static boolean isLeftToJava(MethodModel method) {
    return method.code().stream()
        .flatMap(code -> code.elementStream())
        .anyMatch(
            i ->
                i instanceof InvokeDynamicInstruction call
                    && call.bootstrapMethod().owner().displayName().equals("ObjectMethods"));
  }

  /** 31 times the sum so far and the hash of each component, as Java has it. */
  private static void hash(CodeBuilder code, ClassDesc self, RecordAttribute header) {
    code.iconst_0();
    for (RecordComponentInfo part : header.components()) {
      ClassDesc type = part.descriptorSymbol();
      code.bipush(31).imul().aload(0).getfield(self, part.name().stringValue(), type);
      if (type.isPrimitive()) {
        code.invokestatic(boxOf(type), "hashCode", MethodTypeDesc.of(ConstantDescs.CD_int, type));
      } else {
        code.invokestatic(OBJECTS, "hashCode", HASH_OF_ANY);
      }
      code.iadd();
    }
    code.ireturn();
  }

  /** The same class, and the same components: numbers as their boxes compare, so that NaN is NaN. */
  private static void same(CodeBuilder code, ClassDesc self, RecordAttribute header) {
    Label differs = code.newLabel();
    code.aload(1).instanceOf(self).ifeq(differs).aload(1).checkcast(self).astore(2);
    for (RecordComponentInfo part : header.components()) {
      ClassDesc type = part.descriptorSymbol();
      String name = part.name().stringValue();
      code.aload(0).getfield(self, name, type).aload(2).getfield(self, name, type);
      if (type.isPrimitive()) {
        code.invokestatic(boxOf(type), "compare", MethodTypeDesc.of(ConstantDescs.CD_int, type, type)).ifne(differs);
      } else {
        code.invokestatic(OBJECTS, "equals", ANY_EQUAL).ifeq(differs);
      }
    }
    code.iconst_1().ireturn().labelBinding(differs).iconst_0().ireturn();
  }

  private static ClassDesc boxOf(ClassDesc primitive) {
    return switch (primitive.descriptorString()) {
      case "I" -> ConstantDescs.CD_Integer;
      case "J" -> ConstantDescs.CD_Long;
      case "D" -> ConstantDescs.CD_Double;
      case "F" -> ConstantDescs.CD_Float;
      case "Z" -> ConstantDescs.CD_Boolean;
      case "B" -> ConstantDescs.CD_Byte;
      case "S" -> ConstantDescs.CD_Short;
      default -> ConstantDescs.CD_Character;
    };
  }
}
