using Circuits.Model;
using Circuits.Stacking;

namespace Circuits.Studies.Matrix;

/// <summary>Joints laid together, each combination of its parts' own revisions once; what was changed on the bench rarely comes again.</summary>
internal sealed class JointStacks(Unit unit)
{
    private readonly HashSet<Revision> own = new(unit.Parts.SelectMany(part => part.Revisions), ReferenceEqualityComparer.Instance);
    private readonly Dictionary<object, OneJoint> joints = unit.Joints.ToDictionary(
        object (joint) => joint,
        joint => new OneJoint(
            [.. joint.Sheets.Prepend(joint.Upper).Append(joint.Lower).Select(use => unit.Parts.IndexOf(unit.FindPart(use.Name)!))], []),
        ReferenceEqualityComparer.Instance);

    /// <summary>A joint of an assembly, laid together.</summary>
    /// <param name="assembly">An assembly of the unit, changed or not.</param>
    /// <param name="joint">A joint of the assembly's unit, which may have its sheets in another order than this one's.</param>
    public StackedJoint Of(Assembly assembly, Joint joint)
    {
        if (!joints.TryGetValue(joint, out var known)) return Stack();
        var key = new JointParts([.. known.Parts.Select(part => assembly.Revisions[part])]);
        if (!known.Stacks.TryGetValue(key, out var stack))
        {
            stack = Stack();
            if (Array.TrueForAll(key.Revisions, own.Contains)) known.Stacks[key] = stack;
        }

        return stack;

        StackedJoint Stack() => JointStacker.Stack(assembly, joint, static (_, _) => { });
    }

    private sealed record OneJoint(int[] Parts, Dictionary<JointParts, StackedJoint> Stacks);

    private readonly record struct JointParts(Revision[] Revisions)
    {
        public bool Equals(JointParts other)
        {
            for (var i = 0; i < Revisions.Length; i++)
            {
                if (!ReferenceEquals(Revisions[i], other.Revisions[i])) return false;
            }

            return true;
        }

        public override int GetHashCode()
        {
            var hash = 0;
            foreach (var revision in Revisions) hash = (hash * 31) + System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(revision);
            return hash;
        }
    }
}
