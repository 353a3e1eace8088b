using Circuits.Model;
using Circuits.Stacking;

namespace Circuits.Studies.Matrix;

/// <summary>Joints laid together, each combination of its parts once.</summary>
internal sealed class JointStacks(Unit unit)
{
    private readonly Dictionary<object, OneJoint> joints = unit.Joints.ToDictionary(
        object (joint) => joint,
        joint => new OneJoint(
            [.. joint.Sheets.Prepend(joint.Upper).Append(joint.Lower).Select(use => unit.Parts.IndexOf(unit.FindPart(use.Name)!))], []),
        ReferenceEqualityComparer.Instance);

    /// <summary>A joint of an assembly, laid together.</summary>
    public StackedJoint Of(Assembly assembly, Joint joint)
    {
        var (parts, stacks) = joints[joint];
        var key = new JointParts([.. parts.Select(part => assembly.Revisions[part])]);
        if (!stacks.TryGetValue(key, out var stack)) stacks[key] = stack = JointStacker.Stack(assembly, joint, static (_, _) => { });
        return stack;
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
