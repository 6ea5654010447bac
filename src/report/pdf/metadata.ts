/** The XMP packet: the same as the information dictionary, and what the file is built to (PDF/A-2b, PDF/UA-1). */

export interface Metadata {
  readonly title: string;
  readonly author: string;
  readonly subject: string;
  readonly identification: string;
  readonly language: string;
  readonly producer: string;
  readonly created: { readonly pdf: string; readonly xmp: string };
}

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}

function alternative(tag: string, text: string): string {
  return `<${tag}><rdf:Alt><rdf:li xml:lang="x-default">${escaped(text)}</rdf:li></rdf:Alt></${tag}>`;
}

/** Schema description that PDF/A asks for wherever a property is not one of its own. */
const UA_SCHEMA = `<pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
<pdfaSchema:schema>PDF/UA identification schema</pdfaSchema:schema>
<pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
<pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
<pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
<pdfaProperty:name>part</pdfaProperty:name>
<pdfaProperty:valueType>Integer</pdfaProperty:valueType>
<pdfaProperty:category>internal</pdfaProperty:category>
<pdfaProperty:description>Part of ISO 14289 that the file is built to</pdfaProperty:description>
</rdf:li></rdf:Seq></pdfaSchema:property>
</rdf:li></rdf:Bag></pdfaExtension:schemas>`;

export function xmpPacket(metadata: Metadata): string {
  return `<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about=""
 xmlns:dc="http://purl.org/dc/elements/1.1/"
 xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
 xmlns:xmp="http://ns.adobe.com/xap/1.0/"
 xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"
 xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"
 xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
 xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
 xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
<dc:format>application/pdf</dc:format>
${alternative('dc:title', metadata.title)}
<dc:creator><rdf:Seq><rdf:li>${escaped(metadata.author)}</rdf:li></rdf:Seq></dc:creator>
${alternative('dc:description', metadata.subject)}
<dc:identifier>${escaped(metadata.identification)}</dc:identifier>
<dc:language><rdf:Bag><rdf:li>${metadata.language}</rdf:li></rdf:Bag></dc:language>
<pdf:Producer>${escaped(metadata.producer)}</pdf:Producer>
<xmp:CreatorTool>${escaped(metadata.producer)}</xmp:CreatorTool>
<xmp:CreateDate>${metadata.created.xmp}</xmp:CreateDate>
<xmp:ModifyDate>${metadata.created.xmp}</xmp:ModifyDate>
<pdfaid:part>2</pdfaid:part>
<pdfaid:conformance>B</pdfaid:conformance>
<pdfuaid:part>1</pdfuaid:part>
${UA_SCHEMA}
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="w"?>`;
}
