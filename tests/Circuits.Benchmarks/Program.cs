Console.WriteLine(Environment.ProcessorCount);
