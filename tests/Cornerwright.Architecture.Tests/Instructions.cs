using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;

namespace Cornerwright.Architecture.Tests;

/// <summary>One instruction of a compiled method; the token is nil where it names nothing.</summary>
internal readonly record struct Instruction(int Offset, OpCode Code, EntityHandle Token);

/// <summary>Reads a method body instruction by instruction. Source: ECMA-335, 6th edition (2012), partition III, 1.2.</summary>
internal static class Instructions
{
    private static readonly Dictionary<short, OpCode> Codes = typeof(OpCodes).GetFields()
        .Select(f => f.GetValue(null)).OfType<OpCode>().ToDictionary(c => c.Value);

    public static IEnumerable<Instruction> Of(MethodBodyBlock body)
    {
        var found = new List<Instruction>();
        var bytes = body.GetILReader();
        while (bytes.RemainingBytes > 0)
        {
            int offset = bytes.Offset;
            short value = bytes.ReadByte();
            if (value == 0xFE)
            {
                value = unchecked((short)(0xFE00 | bytes.ReadByte()));
            }

            var code = Codes[value];
            found.Add(new Instruction(offset, code, Operand(ref bytes, code)));
        }

        return found;
    }

    private static EntityHandle Operand(ref BlobReader bytes, OpCode code)
    {
        switch (code.OperandType)
        {
            case OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType:
                return (EntityHandle)MetadataTokens.Handle(bytes.ReadInt32());
            case OperandType.InlineSwitch:
                int targets = bytes.ReadInt32();
                bytes.Offset += 4 * targets;
                return default;
            default:
                bytes.Offset += code.OperandType switch
                {
                    OperandType.InlineNone => 0,
                    OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                    OperandType.InlineVar => 2,
                    OperandType.InlineI8 or OperandType.InlineR => 8,
                    _ => 4,
                };
                return default;
        }
    }
}
