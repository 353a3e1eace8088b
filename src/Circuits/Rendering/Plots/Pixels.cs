using System.Buffers.Binary;
using System.IO.Compression;

namespace Circuits.Rendering.Plots;

/// <summary>A picture of pixels, white at first, and its form as a file.</summary>
/// <param name="width">Pixels across.</param>
/// <param name="height">Pixels down.</param>
internal sealed class Pixels(int width, int height)
{
    private const int Channels = 3;

    private readonly byte[] bytes = Filled(width * height * Channels);

    /// <summary>Pixels across.</summary>
    public int Width => width;

    /// <summary>Pixels down.</summary>
    public int Height => height;

    /// <summary>Lays a colour over a pixel.</summary>
    /// <param name="x">Across.</param>
    /// <param name="y">Down.</param>
    /// <param name="color">Red, green, blue.</param>
    /// <param name="share">How much of the pixel it covers, 0 to 1.</param>
    public void Blend(int x, int y, (byte Red, byte Green, byte Blue) color, double share)
    {
        var at = ((y * width) + x) * Channels;
        bytes[at] = Mix(bytes[at], color.Red, share);
        bytes[at + 1] = Mix(bytes[at + 1], color.Green, share);
        bytes[at + 2] = Mix(bytes[at + 2], color.Blue, share);
    }

    /// <summary>The picture as PNG (ISO/IEC 15948): true colour, eight bits, each row as the difference to the one above.</summary>
    public byte[] Png()
    {
        using var file = new MemoryStream();
        file.Write([0x89, (byte)'P', (byte)'N', (byte)'G', 0x0d, 0x0a, 0x1a, 0x0a]);
        var header = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, width);
        BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), height);
        (header[8], header[9]) = (8, 2);
        Chunk(file, "IHDR"u8, header);
        using (var packed = new MemoryStream())
        {
            using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true)) WriteRows(zlib);
            Chunk(file, "IDAT"u8, packed.ToArray());
        }

        Chunk(file, "IEND"u8, []);
        return file.ToArray();
    }

    private void WriteRows(Stream stream)
    {
        const byte Up = 2;
        var stride = width * Channels;
        var row = new byte[stride + 1];
        row[0] = Up;
        for (var y = 0; y < height; y++)
        {
            for (var i = 0; i < stride; i++) row[i + 1] = (byte)(bytes[(y * stride) + i] - (y == 0 ? 0 : bytes[((y - 1) * stride) + i]));
            stream.Write(row);
        }
    }

    private static void Chunk(Stream stream, ReadOnlySpan<byte> name, ReadOnlySpan<byte> content)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, content.Length);
        stream.Write(number);
        stream.Write(name);
        stream.Write(content);
        BinaryPrimitives.WriteUInt32BigEndian(number, ~Crc(Crc(uint.MaxValue, name), content));
        stream.Write(number);
    }

    // The check of ISO/IEC 15948, annex D, a bit at a time.
    private static uint Crc(uint crc, ReadOnlySpan<byte> content)
    {
        foreach (var value in content)
        {
            crc ^= value;
            for (var bit = 0; bit < 8; bit++) crc = (crc & 1) == 0 ? crc >> 1 : (crc >> 1) ^ 0xedb88320;
        }

        return crc;
    }

    private static byte Mix(byte below, byte above, double share) => (byte)Math.Round(below + ((above - below) * share));

    private static byte[] Filled(int length)
    {
        var filled = new byte[length];
        Array.Fill(filled, byte.MaxValue);
        return filled;
    }
}
