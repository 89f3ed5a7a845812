/** Studies as pages with pictures: SVG and PDF. */
package witnessmark.chart;
